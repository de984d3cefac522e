import { ourName } from '../tokens.ts'
import type { ShorthandRule } from './view.ts'

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
/** After these a movement's name stands. */
const beforeMovements = new Set([
	'main',
	'accessory',
	'warm-up',
	'conditioning',
	'test',
	'did',
	'best',
	'base',
	'fails',
	'keep',
	'drop',
])

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

/** `add 2.5 kg each week` */
const changeFirst: ShorthandRule = {
	begins: ['add', 'take', '+', '-'],
	read: view => {
		const unit = view.unit(2) ?? (view.word(2) === 'sets' ? 'sets' : undefined)
		const every = view.word(3) === 'per' || view.word(3) === 'a' ? 'each' : view.word(3)
		const isChange = view.isNumber(1) && unit !== undefined && every === 'each' && ['week', 'session'].includes(view.word(4))
		const sign = view.word() === '+' ? 'add' : view.word() === '-' ? 'take' : view.word()
		return view.kind === 'block' && view.startsLine() && isChange
			? { take: 5, put: ['each', view.word(4), sign, 1, unit] }
			: undefined
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
	begins: ['-', '–', '—', '•', '*', '·'],
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

/** `main front squat 4 x 5`: a name is one word. */
const longName: ShorthandRule = {
	begins: ['a-name'],
	read: view => {
		if (!beforeMovements.has(view.wordBefore())) return undefined
		let length = 1
		while (
			!view.startsLine(length) &&
			!/\d/.test(view.word(length)) &&
			(view.isName(length) || wordsInNames.has(view.word(length)))
		)
			length++
		const isWhole = view.type(length) === '' || view.startsLine(length) || endsName(view, length)
		if (length === 1 || !isWhole) return undefined
		const words = Array.from({ length }, (_, index) => ourName(view.word(index)))
		return { take: length, put: [{ type: 'ID', image: words.join('-') }] }
	},
}

function endsName(view: Parameters<ShorthandRule['read']>[0], at: number): boolean {
	if (view.word(at) === ':') return true
	const after = view.afterRange(at)
	if (after === at) return false
	return view.isTimes(after) || ['sets', 'set', ',', '/'].includes(view.word(after)) || view.unit(after) !== undefined
}

export const lineRules = [
	week,
	missingColon,
	dashAfterWeek,
	signedChange,
	changeFirst,
	role,
	warmUp,
	superset,
	bullet,
	colon,
	punctuation,
	longName,
]
