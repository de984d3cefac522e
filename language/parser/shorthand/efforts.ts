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
	begins: ['≤', '<=', 'max', 'up'],
	read: view => {
		const length = view.word() === 'up' ? 2 : 1
		if (view.word() === 'up' && view.word(1) !== 'to') return undefined
		return scales.has(view.before()) && view.isNumber(length)
			? { take: length, put: [{ type: 'AT_MOST', image: 'at' }, 'most'] }
			: undefined
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

export const effortRules = [atEffort, scaleBehind, filler, ceiling, outOfTen]
