import type { IToken } from 'chevrotain'
import type { Correction, Fault } from '../model/reading.ts'
import { quote } from '../parser/messages.ts'
import { spanOf } from '../parser/parse.ts'
import type { Origin } from '../parser/shorthand/read.ts'
import { ourName, ourNumber, straightQuoted } from '../parser/tokens.ts'
import { likelyDates } from './reader.ts'

/** Numbers, dates and texts that are read though they are not written in our way: each with the correction that brings it there. */
export function reportSpellings(tokens: readonly IToken[]): Fault[] {
	return tokens
		.map((token, index) => reportAssumedUnit(tokens, index) ?? reportSpelling(token))
		.filter(fault => fault !== undefined)
}

/** `3x5x100`: the third number is a load, and in what it was not said. */
function reportAssumedUnit(tokens: readonly IToken[], index: number): Fault | undefined {
	const [sign, number, unit] = tokens.slice(index, index + 3)
	if (!sign || !number || !unit || !isAssumed(unit) || !isAssumed(sign) || unit.tokenType.name !== 'kg') return undefined
	const behind = { start: spanOf(number).end, end: spanOf(number).end }
	const corrections = ['kg', 'lb'].map(one => ({
		title: `Write at ${number.image} ${one}`,
		edits: [
			{ span: spanOf(sign), text: 'at' },
			{ span: behind, text: ` ${one}` },
		],
	}))
	const span = { start: spanOf(sign).start, end: behind.end }
	const message = `The third number is read as the load, and in kilograms, since it has no unit. Write at ${number.image} kg or at ${number.image} lb.`
	return { code: 'bad-number', span, message, corrections }
}

function isAssumed(token: IToken): boolean {
	return (token.payload as Origin | undefined)?.unsettled === true
}

function reportSpelling(token: IToken): Fault | undefined {
	const span = spanOf(token)
	const { image } = token
	const write = (text: string): Correction => ({ title: `Write ${text}`, edits: [{ span, text }] })
	switch (token.tokenType.name) {
		case 'DECIMAL_COMMA': {
			const number = ourNumber(image)
			const message = `Decimals have a point, not a comma: write ${number}.`
			return { code: 'bad-number', span, message, corrections: [write(number)] }
		}
		case 'OTHER_DATE': {
			const dates = likelyDates(image)
			const other = dates[1] ? `, the day before the month; it could also be ${dates[1]}` : ''
			const begin = dates.length === 0 ? `${image} is not in the calendar.` : `Read as ${dates[0]}${other}.`
			const message = `${begin} A date is written as year, month, day: 2026-10-05.`
			return { code: 'bad-date', span, message, corrections: dates.map(write) }
		}
		case 'UNCLOSED_STRING': {
			const closed = straightQuoted(image.trimEnd())
			const message = `This text has no closing quote, so it ends with the line: ${quote(image)}`
			return { code: 'syntax', span, message, corrections: [{ ...write(closed), title: 'Close the quote' }] }
		}
		case 'OTHER_NAME':
			return reportName(token)
		default:
			return undefined
	}
}

/** Names in other letters are read in ours, if there are any; see language/spelling. */
function reportName(token: IToken): Fault | undefined {
	if (ourName(token.image) !== '') return undefined
	const message = `A name is made of lower-case letters a to z, digits and hyphens: ${quote(token.image)} cannot be one. The title after it, in quotes, is free.`
	return { code: 'syntax', span: spanOf(token), message, corrections: [] }
}
