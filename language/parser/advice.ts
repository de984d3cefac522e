import type { Correction, TextEdit } from '../model/reading.ts'
import type { Span } from '../model/text.ts'
import { weekdayOf } from '../spelling/weekdays.ts'
import { quote } from './messages.ts'

/** Words of a line that the language has no form for. */
export interface Stranger {
	/** The line up to them, and where it begins. */
	readonly before: string
	readonly lineStart: number
	/** Without the signs around them. */
	readonly words: string
	/** With the signs around them. */
	readonly span: Span
}

/** What to write instead, in plain words, and as corrections. */
interface Advice {
	readonly message: string
	readonly corrections: readonly Correction[]
	/** May the words stay, as a note? */
	readonly isForPeople?: boolean
}

/** One kind of thing that coaches write and the language does not say; `undefined` where the words are not of that kind. */
type Adviser = (stranger: Stranger) => Advice | undefined

const replace = (span: Span, text: string): TextEdit => ({ span, text })
const leaveOut = ({ span }: Stranger): Correction => ({ title: 'Leave it out', edits: [replace(span, '')] })

/** `20 kg/hand`, `20 kg each` */
const perHand: Adviser = stranger => {
	if (!/(kg|lb)s?\s*[/(]?$/i.test(stranger.before) || /^\s*collars/i.test(stranger.before)) return undefined
	if (!/^(per|each|ea|a)?\.?\s*(hand|dumbbell|db|kb|kettlebell|arm)?s?$/i.test(stranger.words)) return undefined
	const sides: Correction = { title: 'Write "each side"', edits: [replace(stranger.span, ' each side')] }
	return {
		message: `The load of two dumbbells or handles is that of one hand as it is, so ${quote(stranger.words)} can go. What is done on one side and then on the other is written "each side".`,
		corrections: [leaveOut(stranger), sides],
	}
}

/** `collars 2.5 kg each` */
const eachCollar: Adviser = ({ before, words, span, lineStart }) => {
	const mass = /^\s*collars\s+(\d+(?:\.\d+)?)\s*(kg|lb)s?\s*$/i.exec(before)
	if (!mass || !/^(each|ea|a side|per side)$/i.test(words)) return undefined
	const text = `${Number(mass[1]) * 2} ${mass[2]!.toLowerCase()}`
	const at = { start: lineStart + before.indexOf(mass[1]!), end: span.end }
	return {
		message: `The mass of collars is that of the pair: ${text}.`,
		corrections: [{ title: `Write ${text}`, edits: [replace(at, text)] }],
	}
}

/** `session on monday`: the day is there, the name is not. */
const sessionWithoutName: Adviser = ({ before, words, lineStart }) => {
	const on = /^\s*session\s+(?=on\s*$)/i.exec(before)
	const day = weekdayOf(words)
	if (!on || !day) return undefined
	const at = lineStart + on[0].length
	return {
		message: `A session has a name before its day, as in session heavy-pull on ${day}.`,
		corrections: [{ title: `Call it ${day}`, edits: [replace({ start: at, end: at }, `${day} `)] }],
	}
}

/** Each metre by international agreement: a yard is 0.9144 m, a foot a third of it. */
const metres: readonly (readonly [RegExp, number])[] = [
	[/^(yd|yds|yards?)$/i, 0.9144],
	[/^(ft|feet|foot)$/i, 0.3048],
	[/^(km|kms|kilomet(re|er)s?)$/i, 1000],
	[/^(mi|miles?)$/i, 1609.344],
]

/** `20 yards` */
const otherDistance: Adviser = ({ before, words, span, lineStart }) => {
	const unit = metres.find(([name]) => name.test(words))
	const amount = /(\d+(?:\.\d+)?)\s*$/.exec(before)
	if (!unit || !amount) return undefined
	const inMetres = Math.round(Number(amount[1]) * unit[1] * 10) / 10
	const at = { start: lineStart + amount.index, end: span.end }
	return {
		message: `Distances are in metres: ${amount[1]} ${words} are ${inMetres} m.`,
		corrections: [{ title: `Write ${inMetres} m`, edits: [replace(at, `${inMetres} m`)] }],
	}
}

/** `4 x 2+2+2` */
const pieces: Adviser = ({ before, words, span, lineStart }) => {
	const first = /\s*\(?(\d+)$/.exec(before)
	const counts = first && [first[1]!, ...words.split('+').slice(1)].map(part => Number(part.trim()))
	if (!counts || !/^(\s*\+\s*\d+)+$/.test(words)) return undefined
	const reps = counts.reduce((sum, count) => sum + count, 0)
	const isEven = counts.every(count => count === counts[0])
	const text = `${reps} in clusters of ${counts[0]} resting 20 s`
	const at = { start: lineStart + first!.index, end: span.end }
	return {
		message: `${counts.join('+')}: one set in pieces, with a short rest between them, is written in clusters, as in 4 x 6 in clusters of 2 resting 20 s. Two movements in turn are two items, the second "with the item above".`,
		corrections: isEven ? [{ title: `Write ${text}`, edits: [replace(at, ` ${text}`)] }] : [],
	}
}

/** `EMOM`, `every 2 min` */
const byTheClock: Adviser = ({ words }) =>
	/^(e\d*mom|every\b.*\b(min|mins|minutes?|s|secs?|seconds)|on the minute)\b/i.test(words)
		? {
				message: `${quote(words)}: there is no form for sets that start by the clock. Write the rest between them, as in rest 60 s, and keep the words in a note.`,
				corrections: [],
				isForPeople: true,
			}
		: undefined

/** `paused`, `w/ 2 s pause` */
const pause: Adviser = ({ words }) =>
	/\bpaus/i.test(words)
		? {
				message: `${quote(words)}: a pause is a part of the tempo. tempo 3-2-1-0 is 3 s down, 2 s held, 1 s up. Or keep the words in a note.`,
				corrections: [],
				isForPeople: true,
			}
		: undefined

/** `heavy`, `light`, `hard` */
const howHeavy: Adviser = ({ words }) =>
	/^(very |pretty |fairly |moderately )?(heavy|heavier|light|lighter|easy|easier|moderate|medium|hard|harder|challenging)$/i.test(
		words,
	)
		? {
				message: `${quote(words)}: how heavy it is, is said by a load or an effort, as in at 80%, at 100 kg or rpe 8. Or keep the word in a note.`,
				corrections: [],
				isForPeople: true,
			}
		: undefined

const namesOfReps: Readonly<Record<string, number>> = { single: 1, double: 2, triple: 3, max: 1 }

/** `work up to 5RM`, `build to a heavy single`, `1RM` */
const findAMax: Adviser = ({ before, words, span, lineStart }) => {
	const item = /^\s*(main|accessory)\s+[\w-]+\s*$/i.exec(before)
	const found = /\b(\d+)\s*(?:rm|reps?)?$|\b(single|double|triple|max)$/i.exec(words)
	const isAboutAMax = /^(work|build|ramp|go|up|find|test|new|to|top|heavy|max)\b/i.test(words) || /^\d+\s*rm$/i.test(words)
	if (!item || !found || !isAboutAMax) return undefined
	const reps = found[1] ?? namesOfReps[found[2]!.toLowerCase()]!
	const role = lineStart + before.search(/\S/)
	const edits = [replace({ start: role, end: role + item[1]!.length }, 'test'), replace(span, ` 1 x ${reps}`)]
	return {
		message: `${quote(words)}: a day that finds what somebody can lift is a test, as in test deadlift 1 x ${reps}. The sets up to it are worked out, its load is open.`,
		corrections: [{ title: `Write a test of ${reps}`, edits }],
	}
}

/** `x 5`, `x5`: nobody says how many sets. */
const noSets: Adviser = ({ words, span }) => {
	const reps = /^x\s*(\d+)$/i.exec(words)?.[1]
	if (reps === undefined) return undefined
	return {
		message: `How many sets? 3 sets of ${reps} are written 3 x ${reps}.`,
		corrections: [{ title: `Write 1 x ${reps}`, edits: [replace(span, ` 1 x ${reps}`)] }],
	}
}

/** `2-3 sets`: nobody says of how many reps. */
const noReps: Adviser = ({ words }) => {
	const sets = /^(\d+(?:\s*[-–]\s*\d+)?)\s*(?:x|sets?|rounds?)?$/i.exec(words)?.[1]
	return sets === undefined
		? undefined
		: { message: `How many reps? ${sets} sets of 8 are written ${sets} x 8, of 30 seconds ${sets} x 30 s.`, corrections: [] }
}

/** `5-3-1` */
const listOfReps: Adviser = ({ words, span }) => {
	if (!/^\d{1,2}(-\d{1,2}){2,}$/.test(words)) return undefined
	const text = words
		.split('-')
		.map(reps => `1 x ${reps}`)
		.join(', ')
	return {
		message: `${words}: a set of each is written ${text}.`,
		corrections: [{ title: `Write ${text}`, edits: [replace(span, ` ${text}`)] }],
	}
}

/** `3 x 5 -10%` */
const lessThanWhat: Adviser = ({ before, words, span, lineStart }) => {
	const less = /\s*[-–−]\s*(\d+)$/.exec(before)
	if (!less || words !== '%') return undefined
	const text = `at ${100 - Number(less[1])}% of top set`
	return {
		message: `${less[1]}% less than what? Less than the heaviest set before is written ${text}.`,
		corrections: [{ title: `Write ${text}`, edits: [replace({ start: lineStart + less.index, end: span.end }, ` ${text}`)] }],
	}
}

/** `100 x 5 x 3`: nobody does so many sets. */
const loadFirst: Adviser = ({ before, words, span, lineStart }) => {
	const first = /(\d+)\s*x\s*(\d+)\s*$/i.exec(before)
	const sets = /^x\s*(\d+)$/i.exec(words)?.[1]
	if (!first || sets === undefined) return undefined
	const at = { start: lineStart + first.index, end: span.end }
	const write = (unit: string): Correction => {
		const text = `${sets} x ${first[2]} at ${first[1]} ${unit}`
		return { title: `Write ${text}`, edits: [replace(at, text)] }
	}
	return {
		message: `A load stands behind the reps: ${sets} x ${first[2]} at ${first[1]} kg.`,
		corrections: [write('kg'), write('lb')],
	}
}

const advisers: readonly Adviser[] = [
	...[eachCollar, sessionWithoutName],
	...[perHand, otherDistance, pieces, byTheClock, pause, howHeavy, findAMax, loadFirst, noSets, noReps, listOfReps, lessThanWhat],
]

/** What to say about words that the language has no form for; `undefined` where there is no more to say than that. */
export function adviceOn(stranger: Stranger): Advice | undefined {
	for (const adviser of advisers) {
		const advice = adviser(stranger)
		if (advice) return advice
	}
	return undefined
}
