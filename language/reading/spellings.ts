import type { IToken } from 'chevrotain'
import type { Correction, Fault } from '../model/reading.ts'
import { quote } from '../parser/messages.ts'
import { spanOf } from '../parser/parse.ts'
import type { Origin } from '../parser/shorthand/read.ts'
import { ourName, ourNumber, straightQuoted } from '../parser/tokens.ts'
import { likelyDates } from './reader.ts'

/** Numbers, dates and texts that are read though they are not written in our way: each with the correction that brings it there. */
export function reportSpellings(tokens: readonly IToken[]): Fault[] {
	return [
		...reportDates(tokens),
		...tokens
			.map((token, index) => reportAssumedUnit(tokens, index) ?? reportSpelling(token))
			.filter(fault => fault !== undefined),
		...reportMissingRoles(tokens),
	]
}

/** `3x5x100`: the third number is a load, and in what it was not said. */
function reportAssumedUnit(tokens: readonly IToken[], index: number): Fault | undefined {
	const [sign, number, unit] = tokens.slice(index, index + 3)
	if (!sign || !number || !unit || !isAssumed(unit) || !isAssumed(sign) || unit.tokenType.name !== 'kg') return undefined
	const amount = ourNumber(number.image)
	const span = { start: spanOf(sign).start, end: spanOf(number).end }
	const corrections = ['kg', 'lb'].map(one => ({
		title: `Write at ${amount} ${one}`,
		edits: [{ span, text: `at ${amount} ${one}` }],
	}))
	const message = `The third number is read as the load, and in kilograms, since it has no unit. Write at ${amount} kg or at ${amount} lb.`
	return { code: 'bad-number', span, message, corrections }
}

/** `Deadlift 4 x 5` in a session: nobody says what it is there. However many such lines a definition has, the cause is one. */
function reportMissingRoles(tokens: readonly IToken[]): Fault[] {
	const lines = tokens.flatMap((role, index) => {
		const name = tokens[index + 1]
		const isRole = role.tokenType.name === 'main' || role.tokenType.name === 'accessory'
		// A misspelt one stands there; this one does not.
		const isMissing = isAssumed(role) && (role.payload as Origin).inserted !== undefined
		return name && isRole && isMissing ? [{ role: role.image, name, span: spanOf(name) }] : []
	})
	const [first, ...others] = lines
	if (!first) return []
	const write = (role: string, { span }: (typeof lines)[number]) => ({
		span: { start: span.start, end: span.start },
		text: `${role} `,
	})
	const asRead: Correction = {
		title: others.length === 0 ? `Write "${first.role}"` : 'Write the first of a session as main, the others as accessory',
		edits: lines.map(line => write(line.role, line)),
		isChoice: true,
	}
	const other = first.role === 'main' ? 'accessory' : 'main'
	const instead = others.length === 0 ? [{ title: `Write "${other}"`, edits: [write(other, first)] }] : []
	const many =
		others.length === 0 ? `${quote(first.name.image)} is read as ${first.role}.` : `It is missing on ${lines.length} lines.`
	const message = `Work in a session begins with what it is there: main, accessory, warm-up or conditioning. ${many}`
	return [{ code: 'syntax', span: first.span, message, corrections: [asRead, ...instead] }]
}

/** Dates in another order, or without their year; the two of `19.10. to 1.11.` together. */
function reportDates(tokens: readonly IToken[]): Fault[] {
	const faults: Fault[] = []
	for (let at = 0; at < tokens.length; at++) {
		if (tokens[at]!.tokenType.name !== 'OTHER_DATE') continue
		const isPair = tokens[at + 1]?.image === 'to' && tokens[at + 2]?.tokenType.name === 'OTHER_DATE'
		faults.push(isPair ? reportPair(tokens[at]!, tokens[at + 2]!) : reportDate(tokens[at]!))
		if (isPair) at += 2
	}
	return faults
}

const datesAreWritten = 'A date is written as year, month, day: 2026-10-05.'

/** What a date may be; the likeliest first. One without a year has been looked at where the dates around it are known. */
function readingsOf(token: IToken): string[] {
	if (!isAssumed(token)) return likelyDates(token.image)
	return [token.image, ...((token.payload as Origin).others ?? [])].filter(date => date !== '')
}

function reportDate(token: IToken): Fault {
	const span = spanOf(token)
	const dates = readingsOf(token)
	const [first, second] = dates
	const order = isAssumed(token) ? ';' : ', the day before the month;'
	const read = first === undefined ? '' : ` Read as ${first}${second ? `${order} it could also be ${second}` : ''}.`
	const unread = first === undefined ? `${token.image} is not in the calendar.` : read.trim()
	const begin = isAssumed(token) ? `Which year?${read}` : unread
	const isChoice = isAssumed(token)
	const corrections = dates.map(date => ({ title: `Write ${date}`, edits: [{ span, text: date }], isChoice }))
	return { code: 'bad-date', span, message: `${begin} ${datesAreWritten}`, corrections }
}

function reportPair(from: IToken, to: IToken): Fault {
	const ends = readingsOf(to)
	const pairs = readingsOf(from).flatMap(start => ends.map(end => [start, end] as const))
	const inOrder = pairs.filter(([start, end]) => start <= end)
	const [first, last] = inOrder[0] ?? pairs[0] ?? []
	if (first === undefined || last === undefined) return reportDate(ends.length === 0 ? to : from)
	const edits = [
		{ span: spanOf(from), text: first },
		{ span: spanOf(to), text: last },
	]
	const begin = isAssumed(from) ? 'Which year? Read as' : 'Read as'
	return {
		code: 'bad-date',
		span: { start: spanOf(from).start, end: spanOf(to).end },
		message: `${begin} ${first} to ${last}. ${datesAreWritten}`,
		corrections: [{ title: `Write ${first} to ${last}`, edits, isChoice: isAssumed(from) || inOrder.length !== 1 }],
	}
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
