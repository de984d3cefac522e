import { ourNumber } from '../tokens.ts'
import { changeEnd } from './lines.ts'
import { otherUnitWords, unitOf } from './units.ts'
import type { Rewrite, ShorthandRule, View } from './view.ts'

const timesSigns = ['x', '×', '*', 'х', 'ｘ']
const masses = new Set(['kg', 'lb'])
const loads = new Set(['kg', 'lb', '%', 'rm'])
const bodyweightWords = new Set(['bw', 'bodyweight'])
/** What a tested or an estimated max is called. */
const maxWords = new Set(['1rm', 'e1rm', 'max', 'pr', 'pb'])
/** Two loads that differ by no more than this share are one, rounded. */
const mostDifference = 0.03
/** Less than this percent of the top set is no back-off set. */
const leastBackOff = 50
/** From so many on, a first number is no count of sets. */
export const fewestKilograms = 40
/** Words and signs for a number that is not meant exactly. */
const aboutWords = new Set(['~', '≈', 'about', 'approx', 'approximately', 'around', 'roughly', 'ca', 'circa'])
/** A number after `@` that no unit follows is an effort up to here. */
const mostEffort = 10

/** `70kg-80kg`: both ends of a range with a unit. */
const unitTwice: ShorthandRule = {
	begins: ['kg', 'lb', ...otherUnitWords],
	read: view => {
		const isTwice = view.isNumberBefore() && view.type(1) === 'DASH' && view.isNumber(2) && view.unit(3) === view.unit()
		return isTwice && masses.has(view.unit() ?? '') ? { take: 1, put: [] } : undefined
	},
}

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
		if (next === '≤' || next === '<=' || next === '<') return put('rpe')
		if (next === 'rpe' || next === 'rir') return put()
		if (bodyweightWords.has(next)) return put('at')
		if (aboutWords.has(next) && view.isNumber(2)) return { take: 2, put: ['at'] }
		if (!view.isNumber(1)) return undefined
		const after = view.afterRange(1)
		if (['rpe', 'rir'].includes(view.word(after)) && !view.isNumber(after + 1)) return put()
		if (view.isTimes(after) && bodyweightWords.has(view.word(after + 1))) return put('at')
		const isEffort = view.value(1) <= mostEffort && view.value(after - 1) <= mostEffort && view.unit(after) === undefined
		return put(isEffort ? 'rpe' : 'at')
	},
}

/** `4 x 5 ~70%`, `about 100 kg`, `approx. 70%` */
const about: ShorthandRule = {
	begins: [...aboutWords],
	read: view => {
		const dot = view.word(1) === '.' ? 1 : 0
		return view.isTraining && view.isNumber(1 + dot) && !view.startsLine() ? { take: 1 + dot, put: [] } : undefined
	},
}

/** `between 70 and 75%` */
const between: ShorthandRule = {
	begins: ['between'],
	read: view =>
		view.isTraining && view.isNumber(1) && view.word(2) === 'and' && view.isNumber(3)
			? { take: 4, put: [...(view.before() === 'at' ? [] : ['at']), 1, { type: 'DASH', image: '-' }, 3] }
			: undefined,
}

/** `1 1/4 lb` */
const fraction: ShorthandRule = {
	begins: ['0'],
	read: view => {
		const isFraction = view.isNumber(1) && view.word(2) === '/' && view.isNumber(3) && masses.has(view.unit(4) ?? '')
		const share = Number(view.word(1)) / Number(view.word(3))
		if (!isFraction || !(share < 1) || !Number.isInteger(share * 1000)) return undefined
		return { take: 4, put: [{ type: 'NUMBER', image: String(Number(view.word()) + share) }] }
	},
}

/** `100 kg / 220 lb`: the same load in both units; the first one stays. */
const sameInOther: ShorthandRule = {
	begins: ['/', '('],
	read: view => {
		const unit = view.unit(2)
		const other = view.before()
		if (!view.isTraining || !masses.has(other) || !view.isNumber(1) || !masses.has(unit ?? '') || unit === other) return undefined
		const kilograms = (amount: number, of: string) => (of === 'lb' ? amount * 0.45359237 : amount)
		const first = kilograms(Number(ourNumber(view.wordBefore(2))), other)
		const second = kilograms(view.value(1), unit!)
		return Math.abs(first - second) <= mostDifference * first ? { take: view.word(3) === ')' ? 4 : 3, put: [] } : undefined
	},
}

/** `1.5 x BW`: so many times the bodyweight. */
const timesBodyweight: ShorthandRule = {
	begins: ['0'],
	read: view => {
		const name = view.isTimes(1) ? 2 : 1
		if (!view.isTraining || view.before() === 'TIMES' || !bodyweightWords.has(view.word(name))) return undefined
		const percent = { type: 'NUMBER', image: String(Math.round(view.value() * 1000) / 10) }
		return {
			take: name + 1,
			put: [...(view.before() === 'at' ? [] : ['at']), percent, '%', 'of', { type: 'ID', image: 'bodyweight' }],
		}
	},
}

/** `1 x 3 @ 8, 3 x 5 -10%`: less than the heaviest set before. */
const backOff: ShorthandRule = {
	begins: ['-', '–', '−'],
	read: view => {
		const isLess = view.isTraining && view.followsWork && view.hasEarlierSets && view.isNumber(1) && view.unit(2) === '%'
		const share = 100 - view.value(1)
		if (!isLess || share < leastBackOff || view.word(3) === 'of') return undefined
		return { take: 3, put: ['at', { type: 'NUMBER', image: String(share) }, '%', 'of', 'top', 'set'] }
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
		// `100 x 5 x 3`: a load stands first.
		if (Number(view.wordBefore(3)) >= fewestKilograms && view.value(1) <= 20) return undefined
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
		if (view.isTimes(2) && view.isNumber(3) && view.isTimes(4) && view.isNumber(5)) return { take: 6, put: [5, 'x', 3, ...load] }
		if (view.isTimes(2) && view.isNumber(3) && !view.isTimes(4)) return { take: 4, put: ['1', 'x', 3, ...load] }
		if (view.word(2) === 'for' && view.isNumber(3) && view.isTimes(4) && view.isNumber(5))
			return { take: 6, put: [3, 'x', 5, ...load] }
		if (view.isNumber(2) && view.isTimes(3) && view.isNumber(4)) return { take: 5, put: [2, 'x', 4, ...load] }
		return undefined
	},
}

/** `4 x 5 70%`, `3 x 8 100 kg`, `4 x 5 70` */
const missingAt: ShorthandRule = {
	begins: ['0'],
	read: view => {
		if (!view.isTraining || !view.followsAnEnding || view.startsLine()) return undefined
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
		if (view.before() === '%') return { take: 1, put: ['of', 'bodyweight'] }
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
		view.isTraining &&
		view.followsWork &&
		!view.isTight() &&
		view.isNumber(1) &&
		masses.has(view.unit(2) ?? '') &&
		changeEnd(view, 3) === undefined
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

export const loadRules = [
	unitTwice,
	units,
	atSign,
	about,
	between,
	fraction,
	sameInOther,
	timesBodyweight,
	thirdNumber,
	repsAtLoad,
	loadFirst,
	percentOfMax,
	best,
	missingAt,
	backOff,
	bodyweight,
	addedMass,
]
