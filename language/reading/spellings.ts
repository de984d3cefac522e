import type { IToken } from 'chevrotain'
import type { Correction, Fault } from '../model/reading.ts'
import { quote } from '../parser/messages.ts'
import { spanOf } from '../parser/parse.ts'
import { ourName, ourNumber, straightQuoted } from '../parser/tokens.ts'
import { reportOldSpelling } from '../spelling/old-spelling.ts'
import { likelyDates } from './reader.ts'

/** Words that are read though they are not written in our spelling: each with the correction that brings it there. */
export function reportSpellings(tokens: readonly IToken[]): Fault[] {
	const slips = tokens.flatMap((token, index) => {
		const fault = reportSpelling(token, tokens, index)
		return fault ? [fault] : []
	})
	return [...slips, ...reportOldSpelling(tokens)]
}

function reportSpelling(token: IToken, tokens: readonly IToken[], index: number): Fault | undefined {
	const span = spanOf(token)
	const { image } = token
	const write = (text: string): Correction => ({ title: `Write ${text}`, edits: [{ span, text }] })
	switch (token.tokenType.name) {
		case 'DECIMAL_COMMA':
		case 'OTHER_NUMBER': {
			const number = ourNumber(image)
			const why = /^\d+,/.test(image) ? 'Decimals have a point, not a comma' : 'Numbers are written in plain digits'
			return { code: 'bad-number', span, message: `${why}: write ${number}.`, corrections: [write(number)] }
		}
		case 'OTHER_DATE': {
			const dates = likelyDates(image)
			const begin = dates.length === 0 ? `${image} is not in the calendar.` : `Read as ${dates[0]}.`
			const message = `${begin} A date is written as year, month, day: 2026-10-05.`
			return { code: 'bad-date', span, message, corrections: dates.map(write) }
		}
		case 'UNCLOSED_STRING': {
			const closed = straightQuoted(image.trimEnd())
			const message = `This text has no closing quote, so it ends with the line: ${quote(image)}`
			return { code: 'syntax', span, message, corrections: [{ ...write(closed), title: 'Close the quote' }] }
		}
		case 'OTHER_NAME':
			return reportName(token, tokens, index)
		default:
			return undefined
	}
}

function reportName(token: IToken, tokens: readonly IToken[], index: number): Fault | undefined {
	const span = spanOf(token)
	const name = ourName(token.image)
	const rule = 'A name is made of lower-case letters a to z, digits and hyphens'
	if (name === '') return { code: 'syntax', span, message: `${rule}: ${quote(token.image)} cannot be one.`, corrections: [] }
	const afterKeyword = index === 1
	const untitled = afterKeyword && !tokens[2]?.tokenType.name.endsWith('STRING')
	// What people see is the title, so nothing of the name is lost there.
	const text = untitled ? `${name} "${token.image.replace(/[_-]+/g, ' ')}"` : name
	const message = `${rule}: write ${name}.${untitled ? ' The title after it, in quotes, is free.' : ''}`
	return { code: 'syntax', span, message, corrections: [{ title: `Write ${text}`, edits: [{ span, text }] }] }
}
