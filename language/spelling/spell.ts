import type { Line, LineToken } from '../parser/lines.ts'
import { ourName, ourNumber, straightQuoted, titleOfName } from '../parser/tokens.ts'
import { weekdayOf } from './weekdays.ts'

/** A word as the formatter writes it, and the stretch of the line that it stands for; an added word stands for none. */
export interface Word {
	readonly text: string
	/** The lexer's name of it; the dash of a range, which stands tight, is a `RANGE`. */
	readonly type: string
	readonly start: number
	readonly end: number
}

/** Words that agree with the number before them: one, more. */
const units: readonly (readonly [string, string])[] = [
	['session', 'sessions'],
	['set', 'sets'],
	['rep', 'reps'],
	['day', 'days'],
	['week', 'weeks'],
	['time', 'times'],
]

/** What may be written otherwise, by the lexer's name; all else stands as it is. */
const changeable: ReadonlySet<string> = new Set([
	...['ID', 'OTHER_NAME', 'NUMBER', 'DECIMAL_COMMA', 'OTHER_NUMBER', 'TIMES', 'DASH', 'to', 'TEMPO', 'CURLY_STRING'],
	...['%', 'apart', 'by', 'each', ...units.flat()],
])

/** Words after which a number is a percent, by kind of line; where the sign is missing it is meant. */
const wordsBeforePercent: Readonly<Record<string, string>> = {
	CapLine: 'from',
	PercentOfLine: 'at',
	RiseLimit: 'most',
	HeavyLimit: 'from',
	NoSetAboveLimit: 'above',
	FailsLine: 'above',
	KeepLine: 'to',
}

/** The words of a line, each in its one spelling. */
export function spell(line: Line): Word[] {
	const words: Word[] = []
	for (const [at, token] of line.tokens.entries()) {
		if (changeable.has(token.type)) words.push(...spellToken(new Place(line, at)))
		else words.push({ text: token.image, type: token.type, start: token.start, end: token.end })
	}
	return words
}

/** One token of a line, with a view of its neighbours. */
class Place {
	constructor(
		readonly line: Line,
		readonly at: number,
	) {}

	get token(): LineToken {
		return this.line.tokens[this.at]!
	}

	to(by: number): Place {
		return new Place(this.line, this.at + by)
	}

	get type(): string | undefined {
		return this.line.tokens[this.at]?.type
	}

	get image(): string | undefined {
		return this.line.tokens[this.at]?.image
	}

	get isNumber(): boolean {
		return this.type === 'NUMBER' || this.type === 'DECIMAL_COMMA' || this.type === 'OTHER_NUMBER'
	}

	get isName(): boolean {
		return this.type === 'ID' || this.type === 'OTHER_NAME'
	}

	/** `-` or `to` between the two ends of a range; `from 60% to 78%` is none. */
	get isRangeSign(): boolean {
		if (this.type !== 'DASH' && this.type !== 'to') return false
		const low = this.to(-1).type === '%' ? this.to(-2) : this.to(-1)
		return low.isNumber && this.to(1).isNumber && (this.type === 'DASH' || low.to(-1).type !== 'from')
	}

	/** The number that a word after it agrees with, or the low end of a range. */
	get rangeStart(): Place {
		return this.to(-1).isRangeSign ? this.to(this.to(-2).type === '%' ? -3 : -2) : this
	}
}

function spellToken(place: Place): Word[] {
	const { token, line } = place
	const { image } = token
	const write = (text: string, type = token.type): Word => ({
		text,
		type,
		start: token.start,
		end: token.end,
	})
	const added = (text: string): Word => ({ ...write(text, text), start: token.end })
	const addedBefore = (text: string): Word => ({ ...write(text, text), end: token.start })
	if (place.isRangeSign) return [write('-', 'RANGE')]
	if (place.isName) return spellName(place, write, added)
	if (place.isNumber) {
		// A decimal comma is a fault of its own: a list may have been meant.
		const number = write(token.type === 'OTHER_NUMBER' ? ourNumber(image) : image)
		return lacksPercent(place) ? [number, added('%')] : [number]
	}
	switch (token.type) {
		case 'TIMES':
			return [write('x')]
		case 'DASH':
			return [write('-')]
		case 'TEMPO':
			return [write(image.replaceAll('–', '-').toLowerCase())]
		case 'CURLY_STRING':
			return [write(straightQuoted(image))]
		case '%':
			// Both ends may carry a sign; the high end alone keeps it.
			return place.to(1).isRangeSign ? [] : [write(image)]
		case 'apart':
			return line.kind === 'HeavyTogetherLimit' && place.to(-1).type !== ',' ? [addedBefore(','), write(image)] : [write(image)]
		case 'by': {
			const unit = line.tokens[line.tokens.length - 1]!.image
			const lacksUnit = place.to(-1).isNumber && (unit === 'kg' || unit === 'lb')
			return lacksUnit ? [addedBefore(unit), write(image)] : [write(image)]
		}
		case 'day':
			// `on day 1, day 3`: the word stands once before all of them.
			if (place.to(-1).type === ',' && (line.kind === 'Session' || line.kind === 'TurnLine')) return []
			break
		case 'each':
			return line.kind === 'Run' && place.to(-1).type !== ',' ? [addedBefore(','), write(image)] : [write(image)]
		case 'weeks':
			if (line.kind === 'DeloadLine' && place.at === 1) return [write('week', 'week')]
			if (line.kind === 'SwapLine' && place.to(-1).type === 'in') return [write('week', 'week')]
			break
		case 'rep':
			if (place.to(-1).type === 'for') return [write('reps', 'reps')]
	}
	const unit = units.find(forms => forms.includes(token.type))
	if (!unit || !place.to(-1).isNumber) return [write(image)]
	// Reps are what sets are of unless another unit stands there; a gate that is done so many times is done in sets.
	if (unit[0] === 'rep' && isWork(place.to(-1))) return []
	if (unit[0] === 'set' && isWork(place.to(-1))) return []
	const text = isOne(place.to(-1)) ? unit[0] : unit[1]
	return [write(text, text)]
}

/** A name in its spelling; what a capital or an accent in it says to people goes into a title. */
function spellName(place: Place, write: (text: string) => Word, added: (text: string) => Word): Word[] {
	const { image, line } = place
	const weekday = isWeekdayPlace(place) ? weekdayOf(image!) : undefined
	if (weekday) return [write(weekday)]
	const name = ourName(image!)
	if (name === image || name === '') return [write(image!)]
	const isTitled = (line.depth === 0 && line.kind !== 'Log') || line.kind === 'Session'
	if (place.at !== 1 || !isTitled || place.to(1).type?.endsWith('STRING')) return [write(name)]
	return [write(name), { ...added(`"${titleOfName(image!)}"`), type: 'STRING' }]
}

/** Where a day of the week stands: its short form is read there. */
function isWeekdayPlace(place: Place): boolean {
	const { line, at } = place
	const follows = (word: string) => line.tokens.slice(1, at).some(({ type }) => type === word)
	switch (line.kind) {
		case 'Session':
			return follows('on')
		case 'TurnLine':
			return follows('over')
		case 'DaysLine':
		case 'AvailableLine':
			return true
		case 'MoveLine':
			return place.to(-1).type === 'to'
		default:
			return false
	}
}

/** Is the number what one set asks for? */
function isWork(number: Place): boolean {
	return number.line.kind === 'DidLine' || number.rangeStart.to(-1).type === 'TIMES'
}

function isOne(number: Place): boolean {
	return number.rangeStart.at === number.at && Number(ourNumber(number.image!)) === 1
}

function lacksPercent(place: Place): boolean {
	const { line } = place
	if (place.to(1).type === '%' || place.to(1).isRangeSign) return false
	// `75%-80`
	if (place.to(-1).isRangeSign && place.to(-2).type === '%') return true
	if (line.kind === 'ScaleLine') return true
	if (line.kind === 'DeloadLine') return place.to(1).type === 'of'
	if (line.kind === 'DoseLine') return line.tokens[0]!.type === 'intensity'
	const word = wordsBeforePercent[line.kind]
	if (word !== undefined) return place.to(-1).image === word
	return isRampEnd(place)
}

/** `from 60% to 78%`: both numbers of it. */
function isRampEnd(place: Place): boolean {
	const isTo = (at: Place) => at.type === 'to' && !at.isRangeSign
	if (place.to(-1).type === 'from') return isTo(place.to(1)) && place.to(2).isNumber
	const low = place.to(-2).type === '%' ? place.to(-3) : place.to(-2)
	return isTo(place.to(-1)) && low.isNumber && low.to(-1).type === 'from'
}
