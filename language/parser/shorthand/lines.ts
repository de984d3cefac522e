import { nearest } from '../../names/nearest.ts'
import { ourName } from '../tokens.ts'
import { numberWords } from './number-words.ts'
import { beforeMovements, type ShorthandRule, type View } from './view.ts'

const roleWords: Readonly<Record<string, true>> = {
	main: true,
	accessory: true,
	'warm-up': true,
	conditioning: true,
	test: true,
}
const roles: Readonly<Record<string, string>> = {
	warmup: 'warm-up',
	wu: 'warm-up',
	acc: 'accessory',
	accessories: 'accessory',
	assistance: 'accessory',
	cond: 'conditioning',
}
/** Words of the language that stand in names of movements. */
const wordsInNames = new Set(['squat', 'hinge', 'hold', 'carry', 'step', 'bar', 'stack', 'drop', 'one', 'up'])
/** `wk 2: …`, `w2: …` */
const week: ShorthandRule = {
	begins: ['wk', 'wks', 'w'],
	read: view => (view.isNumber(1) && view.kind === 'block' ? { take: 1, put: ['week'] } : undefined),
}

/** `week 1 4 x 5` */
const missingColon: ShorthandRule = {
	begins: ['0'],
	read: view =>
		view.kind === 'block' && view.isNumberBefore() && view.followsWeeks && view.isTimes(view.afterRange())
			? { take: 1, put: [':', 0] }
			: undefined,
}

/** `week 1 - 4 x 5` */
const dashAfterWeek: ShorthandRule = {
	begins: ['-', '–', '—', '−'],
	read: view =>
		view.kind === 'block' && view.followsWeeks && view.isNumber(1) && view.isTimes(2) ? { take: 1, put: [':'] } : undefined,
}

/** `each week +2.5 kg` */
const signedChange: ShorthandRule = {
	begins: ['+', '-', '–', '−'],
	read: view => {
		const isChange = view.before(2) === 'each' && ['week', 'session', 'time'].includes(view.before())
		return isChange && view.isNumber(1) ? { take: 1, put: [view.word() === '+' ? 'add' : 'take'] } : undefined
	},
}

const signs: Readonly<Record<string, string>> = {
	'+': 'add',
	'-': 'take',
	add: 'add',
	take: 'take',
	increase: 'add',
	progress: 'add',
}
const unitsOfChange = new Set(['sets', 'reps', 'rpe'])

/** Where `each week`, `per week`, `/week` or `weekly` ends that begins at a place; `undefined` where none does. */
export function changeEnd(view: View, from: number): { readonly end: number; readonly each: 'week' | 'session' } | undefined {
	if (view.word(from) === 'weekly') return { end: from + 1, each: 'week' }
	const isEvery = ['each', 'per', 'a', 'every', '/'].includes(view.word(from))
	const word = view.word(from + 1)
	const each = word === 'week' || word === 'wk' ? 'week' : word === 'session' || word === 'workout' ? 'session' : undefined
	return isEvery && each ? { end: from + 2, each } : undefined
}

/** `add 2.5 kg each week`, `4 x 5 at 70%, +2.5% per week` */
const changeFirst: ShorthandRule = {
	begins: [...Object.keys(signs), ','],
	read: view => {
		const from = view.word() === ',' ? 1 : 0
		const sign = signs[view.word(from)]
		const number = view.word(from + 1) === 'by' ? from + 2 : from + 1
		const unit = view.unit(number + 1) ?? (unitsOfChange.has(view.word(number + 1)) ? view.word(number + 1) : undefined)
		const change = changeEnd(view, number + 2)
		const isPlace = view.startsLine(from) || view.followsAnEnding
		return view.kind === 'block' && isPlace && sign && view.isNumber(number) && unit && change
			? { take: change.end, put: ['each', change.each, sign, number, unit] }
			: undefined
	},
}

/** `week 4 deload` */
const deloadBehind: ShorthandRule = {
	begins: ['week', 'wk'],
	read: view =>
		view.kind === 'block' && view.startsLine() && view.isNumber(1) && view.word(2) === 'deload' && !view.has('session')
			? { take: 3, put: ['deload', 'week', 1] }
			: undefined,
}

/** `4 weeks` */
const weeksBehind: ShorthandRule = {
	begins: ['0'],
	read: view =>
		view.kind === 'block' && view.startsLine() && ['weeks', 'week'].includes(view.word(1)) && !view.has('session')
			? { take: 2, put: ['weeks', 0] }
			: undefined,
}

/** Words that begin a line of a session otherwise. */
const lineWords = new Set([
	...Object.keys(roleWords),
	...Object.keys(roles),
	...[
		'warm',
		'week',
		'weeks',
		'wk',
		'wks',
		'w',
		'each',
		'once',
		'session',
		'note',
		'allow',
		'with',
		'day',
		'superset',
		'ss',
		'rest',
	],
])

/** Such a word, or one that is misspelt. */
function isLineWord(word: string): boolean {
	return lineWords.has(word) || nearest(word, lineWords) !== undefined
}

/** `Deadlift 4 x 5`, `Back squat: 4 x 5`: what it is in the session is not said. */
const missingRole: ShorthandRule = {
	begins: ['a-name'],
	read: view => {
		if (view.kind !== 'block' || !view.startsLine() || !view.has('session') || isLineWord(view.word())) return undefined
		let length = 1
		while (!view.startsLine(length) && view.isName(length) && !notInNames.has(view.word(length))) length++
		while (wordsInNames.has(view.word(length)) && !view.startsLine(length)) length++
		const sign = [':', '-', '–', '|'].includes(view.word(length)) ? 1 : 0
		const number = length + sign
		const after = view.afterRange(number)
		const isSets =
			after > number && !view.startsLine(number) && (view.isTimes(after) || /^(sets?|rounds)$/.test(view.word(after)))
		if (!isSets && !['amrap', 'amap'].includes(view.word(number))) return undefined
		const role = view.hasSince(Object.keys(roleWords), 'session') ? 'accessory' : 'main'
		const name = Array.from({ length }, (_, index) => ourName(view.word(index))).join('-')
		const guess = { type: role, image: role, unsettled: true, inserted: 'before' as const }
		return { take: number, put: [guess, length === 1 && sign === 0 ? 0 : { type: 'ID', image: name }] }
	},
}

const role: ShorthandRule = {
	begins: Object.keys(roles),
	read: view => (view.kind === 'block' && view.startsLine() ? { take: 1, put: [roles[view.word()]!] } : undefined),
}

/** `warm up plank 2 x 20 s` */
const warmUp: ShorthandRule = {
	begins: ['warm'],
	read: view => (view.kind === 'block' && view.startsLine() && view.word(1) === 'up' ? { take: 2, put: ['warm-up'] } : undefined),
}

/** `superset`, `SS`, `superset w/ above` */
const superset: ShorthandRule = {
	begins: ['superset', 'ss', 'with', 'w/'],
	read: view => {
		const isWith = (by: number) => view.word(by) === 'with' || view.word(by) === 'w/'
		if (view.kind !== 'block' || !(view.startsLine() || view.followsAnEnding)) return undefined
		let by = isWith(0) ? 0 : 1
		const begin = by
		if (isWith(by)) by++
		if (view.word(by) === 'the') by++
		if (view.word(by) === 'item' || view.word(by) === 'exercise') by++
		const isWhole = view.word(by) === 'above'
		if (!isWhole && (by > begin || begin === 0)) return undefined
		const take = isWhole ? by + 1 : 1
		// Our own form.
		if (begin === 0 && take === 4 && view.word() === 'with') return undefined
		return { take, put: ['with', 'the', 'item', 'above'] }
	},
}

/** `- main deadlift`, `• main deadlift`: a list's signs */
const bullet: ShorthandRule = {
	begins: ['-', '–', '—', '•', '*', '·', '+'],
	read: view => (view.startsLine() && !view.isNumber(1) && /^[a-z]/.test(view.word(1)) ? { take: 1, put: [] } : undefined),
}

/** `rest: 60 s`, `Bodyweight: 68 kg` */
const colon: ShorthandRule = {
	begins: [':', '：', '='],
	read: view => {
		if (view.word() === '：' && view.isNumberBefore()) return { take: 1, put: [':'] }
		return /^[a-z-]+$/.test(view.wordBefore()) && !view.startsLine() ? { take: 1, put: [] } : undefined
	},
}

/** `(each side)`, `kg.` */
const punctuation: ShorthandRule = {
	begins: ['(', ')', '（', '）', '.'],
	read: () => ({ take: 1, put: [] }),
}

/** Words that begin something else than the next word of a name. */
const notInNames = new Set([
	...numberWords,
	...[
		'amrap',
		'amap',
		'emom',
		'max',
		'failure',
		'sets',
		'reps',
		'work',
		'build',
		'find',
		'top',
		'top-set',
		'backoff',
		'back-off',
	],
	...['heavy', 'light', 'easy', 'hard', 'moderate', 'rpe', 'rir', 'bw', 'tempo', 'rest', 'each', 'per', 'ea', 'about', 'approx'],
])

/** `main front squat 4 x 5`, `fails deadlift with back rounding`: a name is one word. */
const longName: ShorthandRule = {
	begins: ['a-name'],
	read: view => {
		const isGym = view.wordBefore() === 'at' && view.wordBefore(2) === 'trains'
		const isBreakdown = view.wordBefore() === 'with' && (view.wordBefore(2) === 'broke' || view.wordBefore(3) === 'fails')
		if (!beforeMovements.has(view.wordBefore()) && !isGym && !isBreakdown) return undefined
		let length = 1
		while (
			!view.startsLine(length) &&
			!/\d/.test(view.word(length)) &&
			!notInNames.has(view.word(length)) &&
			!(view.word(length) === 'back' && /^offs?$/.test(view.word(length + 1))) &&
			(view.isName(length) || wordsInNames.has(view.word(length)))
		)
			length++
		const isWhole = isBreakdown || view.type(length) === '' || view.startsLine(length) || endsName(view, length)
		if (length === 1 || !isWhole) return undefined
		const words = Array.from({ length }, (_, index) => ourName(view.word(index)))
		return { take: length, put: [{ type: 'ID', image: words.join('-') }] }
	},
}

function endsName(view: Parameters<ShorthandRule['read']>[0], at: number): boolean {
	if (view.word(at) === ':') return true
	const after = view.afterRange(at)
	if (after === at) return notInNames.has(view.word(at)) || view.word(at) === 'back'
	return view.isTimes(after) || ['sets', 'set', ',', '/'].includes(view.word(after)) || view.unit(after) !== undefined
}

export const lineRules = [
	week,
	missingColon,
	dashAfterWeek,
	signedChange,
	changeFirst,
	deloadBehind,
	weeksBehind,
	missingRole,
	role,
	warmUp,
	superset,
	bullet,
	colon,
	punctuation,
	longName,
]
