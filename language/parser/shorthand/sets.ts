import type { Rewrite, ShorthandRule } from './view.ts'

const asManyAsPossible = ['amrap', 'max']
const limbs = new Set(['side', 'sides', 'leg', 'legs', 'arm', 'arms', 'way'])
const eachSide = [{ type: 'EACH_SIDE', image: 'each' }, 'side']

/** `3 sets of 5`, `3 sets x 5`, `3 sets 5 reps` */
const setsOf: ShorthandRule = {
	begins: ['sets', 'set'],
	read: view => {
		if (!view.isTraining || !view.isNumberBefore()) return undefined
		const joined = ['of', 'x', '×', ','].includes(view.word(1)) ? 1 : 0
		const after = view.afterRange(1 + joined)
		const isWork = view.isNumber(1 + joined) && (joined > 0 || /^reps?$/.test(view.word(after)))
		return isWork ? { take: 1 + joined, put: ['x'] } : undefined
	},
}

/** `5+` */
const plus: ShorthandRule = {
	begins: ['+', '＋'],
	read: view => {
		const isOwn = view.isTight() && (!view.isNumber(1) || !view.isTight(1))
		return view.isTraining && view.followsWork && isOwn ? { take: 1, put: ['or', 'more'] } : undefined
	},
}

/** `1 x AMRAP`, `3 x max reps`, `1 x 5 AMRAP` */
const amrap: ShorthandRule = {
	begins: asManyAsPossible,
	read: view => {
		const take = /^reps?$/.test(view.word(1)) ? 2 : 1
		const put = (...words: string[]): Rewrite => ({ take, put: words })
		if (!view.isTraining) return undefined
		if (view.before() === 'TIMES') return put('1', 'or', 'more')
		if (!view.followsWork) return undefined
		// As many as possible in a time.
		if (view.before() === 's' || view.before() === 'min') return put('for', 'reps')
		return view.before() === 'more' ? put() : put('or', 'more')
	},
}

/** `3x8 each`, `3 x 8 ea side`, `10 per leg`, `10/side` */
const sides: ShorthandRule = {
	begins: ['each', 'ea', 'per', '/', 'both', 'a'],
	read: view => {
		if (!view.isTraining || view.type() === 'EACH_SIDE' || !view.followsAnEnding || view.startsLine()) return undefined
		const dot = view.word(1) === '.' ? 1 : 0
		if (limbs.has(view.word(1 + dot))) return { take: 2 + dot, put: eachSide }
		const stands = (view.word() === 'each' && !['week', 'session', 'time'].includes(view.word(1))) || view.word() === 'ea'
		return stands ? { take: 1 + dot, put: eachSide } : undefined
	},
}

/** `4 x 5 at 70% 3 x 3 at 80%`: groups of sets have a comma between them. */
const missingComma: ShorthandRule = {
	begins: ['0'],
	read: view =>
		view.isTraining && view.followsAnEnding && view.before() !== 'most' && view.isTimes(view.afterRange()) && !view.startsLine()
			? { take: 1, put: [',', 0] }
			: undefined,
}

/** `1 x 5 at 80% then 2 x 5 at 70%` */
const then: ShorthandRule = {
	begins: ['then', 'and'],
	read: view =>
		view.isTraining && view.followsAnEnding && view.isTimes(view.afterRange(1)) ? { take: 1, put: [','] } : undefined,
}

/** `8/8/7 at 80 kg`: sets of a log. */
const slashList: ShorthandRule = {
	begins: ['/'],
	read: view => (view.kind === 'log' && view.isNumberBefore() && view.isNumber(1) ? { take: 1, put: [','] } : undefined),
}

/** `10/10/10` in a log is no date. */
const dateList: ShorthandRule = {
	begins: ['a-date'],
	read: view => {
		const numbers = view.word().split('/')
		const isList = view.kind === 'log' && ['ID', 'OTHER_NAME', ','].includes(view.before()) && numbers.length === 3
		const put = numbers.flatMap((image, index) => [...(index > 0 ? [','] : []), { type: 'NUMBER', image }])
		return isList ? { take: 1, put } : undefined
	},
}

export const setRules = [setsOf, plus, amrap, sides, missingComma, then, slashList, dateList]
