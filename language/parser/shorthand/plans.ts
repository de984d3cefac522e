import type { ShorthandRule } from './view.ts'

/** `run base x2`, `run base twice` */
const runTimes: ShorthandRule = {
	begins: ['a-name'],
	read: view => {
		const times = view.word() === 'twice' ? '2' : /^x(\d+)$/.exec(view.word())?.[1]
		return view.before(2) === 'run' && times !== undefined && !view.startsLine()
			? { take: 1, put: [{ type: 'NUMBER', image: times }, 'times'] }
			: undefined
	},
}

/** `run base 2x` */
const timesBehind: ShorthandRule = {
	begins: ['x', '×'],
	read: view =>
		view.kind === 'plan' && view.before(3) === 'run' && view.isNumberBefore() && !view.isNumber(1)
			? { take: 1, put: ['times'] }
			: undefined,
}

/** `swap A with B`, `swap A -> B` */
const swapSign: ShorthandRule = {
	begins: ['with', '-', '→', '='],
	read: view => {
		const isArrow = view.word() !== 'with' && view.word(1) === '>'
		if (view.before(2) !== 'swap' || (!isArrow && !['with', '→'].includes(view.word()))) return undefined
		return { take: isArrow ? 2 : 1, put: ['for'] }
	},
}

/** `scale deadlift to 95%` */
const scaleTo: ShorthandRule = {
	begins: ['to', 'by'],
	read: view => (view.before(2) === 'scale' && view.isNumber(1) ? { take: 1, put: [] } : undefined),
}

/** `start 12 weeks out from DATE` */
const weeksOut: ShorthandRule = {
	begins: ['out'],
	read: view => {
		const from = ['from', 'of', 'before'].includes(view.word(1)) ? 2 : 1
		return view.kind === 'plan' && ['weeks', 'week'].includes(view.before()) ? { take: from, put: ['before'] } : undefined
	},
}

/** `add plank 3 x 30 s to heavy-pull`: what it is in the session is not said. */
const addWithoutRole: ShorthandRule = {
	begins: ['add'],
	read: view =>
		view.kind === 'plan' && view.startsLine() && view.isName(1)
			? { take: 1, put: [0, { type: 'accessory', image: 'accessory', unsettled: true, inserted: 'behind' }] }
			: undefined,
}

export const planRules = [runTimes, timesBehind, swapSign, scaleTo, weeksOut, addWithoutRole]
