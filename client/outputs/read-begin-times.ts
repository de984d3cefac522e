import { type PartOfDay, partsOfDay, type Weekday, weekdays } from '../../language/model/quantities.ts'
import { nearest } from '../../language/names/nearest.ts'
import type { BeginTime } from './begin-times.ts'

/** Why a text says no times: each client says it in its own words. */
export type BeginFault =
	/** `meant` is how it may be written instead, the likeliest first; empty where nothing is likely. */
	| { readonly kind: 'unclear'; readonly written: string; readonly meant: readonly string[] }
	/** Two times for the same sessions. */
	| { readonly kind: 'twice'; readonly written: string; readonly other: string }

/**
 * Reads when sessions begin: `17:30`, `17:30, saturday 10:00, evening 6:30 pm`. A time stands for sessions that are on no part of the day,
 * unless a part stands before it; for all days, unless a weekday does.
 */
export function readBeginTimes(text: string): { readonly times: readonly BeginTime[] } | { readonly fault: BeginFault } {
	const times: BeginTime[] = []
	const entries = text
		.split(/[,;]/)
		.map(entry => entry.trim().replace(/\s+/g, ' '))
		.filter(entry => entry !== '')
	if (entries.length === 0) return { fault: { kind: 'unclear', written: text, meant: [] } }
	for (const written of entries) {
		const time = readEntry(written)
		if (time === undefined) return { fault: { kind: 'unclear', written, meant: likelyEntries(written) } }
		const same = times.findIndex(({ weekday, part }) => weekday === time.weekday && part === time.part)
		if (same >= 0) return { fault: { kind: 'twice', written, other: entries[same]! } }
		times.push(time)
	}
	return { times }
}

type DayWord = Weekday | PartOfDay

const dayWords: readonly DayWord[] = [...weekdays, ...partsOfDay]

const minutesOfHalfDay = 12 * 60

function readEntry(entry: string): BeginTime | undefined {
	const { words, clock } = apart(entry, word => dayWords.find(one => one === word))
	const day = dayOf(words)
	const minutes = minutesOf(clock)
	return day === undefined || minutes === undefined || !isIn(day.part, minutes) ? undefined : { ...day, minutes }
}

/** The words for a day in an entry, and what else stands there. */
function apart(entry: string, dayWord: (word: string) => DayWord | undefined) {
	const words: DayWord[] = []
	const rest = entry.toLowerCase().replace(/[a-z]+/g, word => {
		if (word === 'at') return ' '
		const found = dayWord(word)
		if (found === undefined) return word
		words.push(found)
		return ' '
	})
	return { words, clock: rest.replace(/^[\s:=]+/, '').trimEnd() }
}

function dayOf(words: readonly DayWord[]): Pick<BeginTime, 'weekday' | 'part'> | undefined {
	const [weekday = null, ...otherDays] = weekdays.filter(one => words.includes(one))
	const [part = null, ...otherParts] = partsOfDay.filter(one => words.includes(one))
	return otherDays.length + otherParts.length > 0 ? undefined : { weekday, part }
}

/** Of `17:30`, `5:30 pm`, `5 pm`. */
function minutesOf(clock: string): number | undefined {
	const [, hour, minute = '00', half] = /^(\d{1,2})(?::(\d\d))?(?: ?([ap])\.?m\.?)?$/.exec(clock) ?? []
	if (hour === undefined || Number(minute) > 59) return undefined
	if (half === undefined) return clock.includes(':') && Number(hour) < 24 ? Number(hour) * 60 + Number(minute) : undefined
	if (Number(hour) < 1 || Number(hour) > 12) return undefined
	return ((Number(hour) % 12) + (half === 'p' ? 12 : 0)) * 60 + Number(minute)
}

/** An evening that begins before noon is a time in the other half of the day. */
function isIn(part: PartOfDay | null, minutes: number): boolean {
	return part === null || (part === 'morning') === minutes < minutesOfHalfDay
}

const timesWithNames: Readonly<Record<string, string>> = { noon: '12:00', midday: '12:00', midnight: '0:00' }

function likelyEntries(entry: string): string[] {
	const named = entry.toLowerCase().replace(/[a-z]+/g, word => timesWithNames[word] ?? word)
	const { words, clock } = apart(named, likelyDayWord)
	const day = dayOf(words)
	if (day === undefined) return []
	return likelyMinutes(clock, day.part).map(minutes =>
		[day.weekday, day.part, clockText(minutes)].filter(one => one !== null).join(' '),
	)
}

/** `sat`, `tuseday`. */
function likelyDayWord(word: string): DayWord | undefined {
	if (word.length < 3) return undefined
	return dayWords.find(one => one.startsWith(word)) ?? nearest(word, dayWords)
}

/** Of `7`, `19.30`, `1930`, `19h30`, `19:30 Uhr`: in both halves of the day where neither is said. */
function likelyMinutes(clock: string, part: PartOfDay | null): number[] {
	const known = minutesOf(clock) ?? minutesRoughly(clock)
	if (known === undefined) return []
	// The hours after noon and midnight are nobody's slip.
	const isSure = known % minutesOfHalfDay < 60 || (part === null && (minutesOf(clock) !== undefined || known > minutesOfHalfDay))
	const both = isSure ? [known] : [known, (known + minutesOfHalfDay) % (2 * minutesOfHalfDay)]
	return both.filter(one => isIn(part, one))
}

function minutesRoughly(clock: string): number | undefined {
	const [, hour, minute = '00'] = /^(\d{1,2})(?:[.:h ]?(\d\d))? ?(?:h|uhr|o'clock)?$/.exec(clock) ?? []
	return hour === undefined || Number(hour) > 23 || Number(minute) > 59 ? undefined : Number(hour) * 60 + Number(minute)
}

function clockText(minutes: number): string {
	return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`
}
