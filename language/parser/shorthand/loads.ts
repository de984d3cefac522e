import { otherUnitWords, unitOf } from './units.ts'
import type { Rewrite, ShorthandRule, View } from './view.ts'

const timesSigns = ['x', '×', '*', 'х', 'ｘ']
const masses = new Set(['kg', 'lb'])
const loads = new Set(['kg', 'lb', '%', 'rm'])
const bodyweightWords = new Set(['bw', 'bodyweight'])
/** What a tested or an estimated max is called. */
const maxWords = new Set(['1rm', 'e1rm', 'max', 'pr', 'pb'])
/** A number after `@` that no unit follows is an effort up to here. */
const mostEffort = 10

/** `100kgs`, `30 secs`, `2'`, `225#` */
const units: ShorthandRule = {
	begins: otherUnitWords,
	read: view => (view.isNumberBefore() ? { take: 1, put: [unitOf(view.word())!] } : undefined),
}

/** `@ 80%`, `@100kg`, `@8`, `@RPE8`, `@31X0`, `@bw`, and in a lifter's bests `@ 2026-09-12` */
const atSign: ShorthandRule = {
	begins: ['@', '＠'],
	read: view => {
		const put = (...words: string[]): Rewrite => ({ take: 1, put: words })
		const next = view.word(1)
		if (view.type(1) === 'DATE' || view.type(1) === 'OTHER_DATE') return put('on')
		if (view.type(1) === 'SHORT_TEMPO' || view.type(1) === 'TEMPO') return put('tempo')
		if (next === '≤' || next === '<=') return put('rpe')
		if (next === 'rpe' || next === 'rir') return put()
		if (bodyweightWords.has(next)) return put('at')
		if (!view.isNumber(1)) return undefined
		const after = view.afterRange(1)
		if (['rpe', 'rir'].includes(view.word(after)) && !view.isNumber(after + 1)) return put()
		const isEffort = view.value(1) <= mostEffort && view.value(after - 1) <= mostEffort && view.unit(after) === undefined
		return put(isEffort ? 'rpe' : 'at')
	},
}

/** `3x5x100`: the third number is the load. */
const thirdNumber: ShorthandRule = {
	begins: timesSigns,
	read: view => {
		if (!view.isTraining || !view.followsWork || !view.isNumber(1)) return undefined
		const after = view.afterRange(1)
		const unit = view.unit(after)
		if (unit !== undefined) return loads.has(unit) ? { take: 1, put: ['at'] } : undefined
		if (after > 2) return { take: 1, put: ['at'] }
		const assumed = (image: string) => ({ type: image, image, unsettled: true })
		return { take: 2, put: [assumed('at'), 1, assumed('kg')] }
	},
}

/** `did deadlift 5x100kg`: reps, and the load. */
const repsAtLoad: ShorthandRule = {
	begins: timesSigns,
	read: view => {
		const isOneSet = view.isNumberBefore() && ['ID', 'OTHER_NAME', ','].includes(view.before(2))
		return view.kind === 'log' && isOneSet && view.isNumber(1) && masses.has(view.unit(2) ?? '')
			? { take: 1, put: ['at'] }
			: undefined
	},
}

/** `100 kg x 5`, `100 kg 3 x 5`: the load stands before the reps. */
const loadFirst: ShorthandRule = {
	begins: ['0'],
	read: view => {
		const isFirst = ['ID', 'OTHER_NAME', ',', ':'].includes(view.before()) && !view.startsLine()
		if (!view.isTraining || !isFirst || !masses.has(view.unit(1) ?? '')) return undefined
		const load = ['at', 0, view.unit(1)!]
		if (view.isTimes(2) && view.isNumber(3) && !view.isTimes(4)) return { take: 4, put: ['1', 'x', 3, ...load] }
		if (view.isNumber(2) && view.isTimes(3) && view.isNumber(4)) return { take: 5, put: [2, 'x', 4, ...load] }
		return undefined
	},
}

/** `4 x 5 70%`, `3 x 8 100 kg`, `4 x 5 70` */
const missingAt: ShorthandRule = {
	begins: ['0'],
	read: view => {
		if (!view.isTraining || !view.followsAnEnding) return undefined
		const after = view.afterRange()
		const isLoad = loads.has(view.unit(after) ?? '')
		const isBare = view.followsWork && view.unit(after) === undefined && !view.isTimes(after) && !isEffortWord(view.word(after))
		const isAdded = view.before() === 'most'
		return (isLoad && !isAdded) || isBare ? { take: 1, put: ['at', 0] } : undefined
	},
}

/** `bw`, `BW+10`, and a bodyweight that lacks its `at`. */
const bodyweight: ShorthandRule = {
	begins: [...bodyweightWords],
	read: view => {
		if (['at', 'of', 'TIMES'].includes(view.before()))
			return view.word() === 'bodyweight' ? undefined : { take: 1, put: ['bodyweight'] }
		if (view.isTraining) return view.followsAnEnding ? { take: 1, put: ['at', 'bodyweight'] } : undefined
		return view.startsLine() && view.word() !== 'bodyweight' ? { take: 1, put: ['bodyweight'] } : undefined
	},
}

/** `pull-up 3 x 5 +10kg`: on top of bodyweight. */
const addedMass: ShorthandRule = {
	begins: ['+'],
	read: view =>
		view.isTraining && view.followsWork && !view.isTight() && view.isNumber(1) && masses.has(view.unit(2) ?? '')
			? { take: 1, put: ['at', 'bodyweight', 0] }
			: undefined,
}

/** `80% 1RM`, `80% of max`, `70% of e1RM` */
const percentOfMax: ShorthandRule = {
	begins: ['of', '0', ...maxWords],
	read: view => {
		if (view.before() !== '%') return undefined
		const from = view.word() === 'of' ? 1 : 0
		const length = maxLength(view, from)
		return length > 0 ? { take: from + length, put: ['of', 'best'] } : undefined
	},
}

/** `1RM deadlift 160 kg`, `PR: deadlift 160 kg` as a lifter's line. */
const best: ShorthandRule = {
	begins: ['0', ...maxWords],
	read: view => {
		const length = maxLength(view, 0)
		const name = view.word(length) === ':' ? length + 1 : length
		return view.kind === 'lifter' && view.startsLine() && length > 0 && view.isName(name)
			? { take: name, put: ['best'] }
			: undefined
	},
}

/** How many tokens from a place on are a word for a max: `1RM` is two. */
function maxLength(view: View, from: number): number {
	if (view.isNumber(from)) return view.word(from) === '1' && view.word(from + 1) === 'rm' ? 2 : 0
	return maxWords.has(view.word(from)) ? 1 : 0
}

function isEffortWord(word: string): boolean {
	return word === 'rpe' || word === 'rir' || word === '/'
}

export const loadRules = [units, atSign, thirdNumber, repsAtLoad, loadFirst, percentOfMax, best, missingAt, bodyweight, addedMass]
