import type { ShorthandRule } from './view.ts'

const scales = new Set(['rpe', 'rir'])

/** `at RPE 8`, `at 8 RPE`: an effort has no `at`. */
const atEffort: ShorthandRule = {
	begins: ['at'],
	read: view => {
		const after = view.afterRange(1)
		const isEffort = scales.has(view.word(1)) || (after > 1 && scales.has(view.word(after)) && !view.isNumber(after + 1))
		return isEffort && view.isTraining ? { take: 1, put: [] } : undefined
	},
}

/** `8 RPE`, `7-8 rpe`, `2RIR` */
const scaleBehind: ShorthandRule = {
	begins: ['0'],
	read: view => {
		const after = view.afterRange()
		const isBehind = scales.has(view.word(after)) && !view.isNumber(after + 1) && view.word(after + 1) !== 'at'
		if (!isBehind || ['TIMES', 'DASH', 'to', 'rpe', 'rir'].includes(view.before())) return undefined
		return { take: after + 1, put: [view.word(after), 0, ...(after === 3 ? [1, 2] : [])] }
	},
}

/** `rpe of 8`, `rpe = 8` */
const filler: ShorthandRule = {
	begins: ['of', '='],
	read: view => (scales.has(view.before()) && view.isNumber(1) ? { take: 1, put: [] } : undefined),
}

/** `rpe ≤8`, `rpe max 8`, `rpe up to 8` */
const ceiling: ShorthandRule = {
	begins: ['≤', '<=', '<', 'max', 'up'],
	read: view => {
		const length = view.word() === 'up' ? 2 : 1
		if (view.word() === 'up' && view.word(1) !== 'to') return undefined
		return scales.has(view.before()) && view.isNumber(length)
			? { take: length, put: [{ type: 'AT_MOST', image: 'at' }, 'most'] }
			: undefined
	},
}

/** `rpe 8 or less` */
const orLess: ShorthandRule = {
	begins: ['rpe', 'rir'],
	read: view =>
		view.isNumber(1) && view.word(2) === 'or' && ['less', 'lower', 'below', 'under'].includes(view.word(3))
			? { take: 4, put: [0, { type: 'AT_MOST', image: 'at' }, 'most', 1] }
			: undefined,
}

/** `rpe 8+`: 8 or more, and an rpe ends at 10. */
const orHarder: ShorthandRule = {
	begins: ['+'],
	read: view =>
		view.isTight() && view.isNumberBefore() && view.before(2) === 'rpe'
			? {
					take: 1,
					put: [
						{ type: 'DASH', image: '-' },
						{ type: 'NUMBER', image: '10' },
					],
				}
			: undefined,
}

/** `2 reps in reserve`, `leave 2 in the tank` */
const inReserve: ShorthandRule = {
	begins: ['0', 'leave', 'leaving', 'keep', 'keeping', 'with', 'w/'],
	read: view => {
		const from = view.isNumber() ? 0 : 1
		if (!view.isTraining || !view.followsAnEnding || view.startsLine() || !view.isNumber(from)) return undefined
		const after = view.afterRange(from)
		const in_ = view.word(after) === 'reps' || view.word(after) === 'rep' ? after + 1 : after
		const the = view.word(in_ + 1) === 'the' ? in_ + 2 : in_ + 1
		const isReserve = view.word(in_) === 'in' && ['reserve', 'tank', 'hand'].includes(view.word(the))
		const range = Array.from({ length: after - from }, (_, index) => from + index)
		return isReserve ? { take: the + 1, put: ['rir', ...range] } : undefined
	},
}

/** `RPE 8/10`, `felt 7/10` */
const outOfTen: ShorthandRule = {
	begins: ['/'],
	read: view => {
		const rated = view.isNumberBefore() && (scales.has(view.before(2)) || view.before(2) === 'felt')
		return rated && view.word(1) === '10' ? { take: 2, put: [] } : undefined
	},
}

export const effortRules = [atEffort, scaleBehind, filler, ceiling, orLess, orHarder, inReserve, outOfTen]
