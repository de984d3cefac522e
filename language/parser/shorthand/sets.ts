import { numberWords } from './number-words.ts'
import type { Put, Rewrite, ShorthandRule, View } from './view.ts'

const asManyAsPossible = ['amrap', 'amap', 'max', 'failure']
/** Words for one group of sets after another. */
const roundWords = ['rounds', 'round', 'rds', 'rd']
const limbs = new Set(['side', 'sides', 'leg', 'legs', 'arm', 'arms', 'way'])
/** Two letters with a sign between them. */
const shortSides = new Set(['p/s', 'e/s', 'l/r', 'r/l', 'l+r', 'r+l'])
const masses = new Set(['kg', 'lb'])
const eachSide = [{ type: 'EACH_SIDE', image: 'each' }, 'side']

/** `3 sets of 5`, `3 sets x 5`, `3 sets 5 reps`, `3 rounds of 5` */
const setsOf: ShorthandRule = {
	begins: ['sets', 'set', ...roundWords],
	read: view => {
		if (!view.isTraining || !view.isNumberBefore()) return undefined
		const joined = ['of', 'x', '×', ',', 'by'].includes(view.word(1)) ? 1 : 0
		const after = view.afterRange(1 + joined)
		const isWork = view.isNumber(1 + joined) && (joined > 0 || /^reps?$/.test(view.word(after)))
		return isWork ? { take: 1 + joined, put: ['x'] } : undefined
	},
}

/** `three sets of five` */
const inWords: ShorthandRule = {
	begins: numberWords,
	read: view => {
		const number = (at: number): Put | undefined => {
			const value = numberWords.indexOf(view.word(at)) + 1
			return value > 0 ? { type: 'NUMBER', image: String(value) } : view.isNumber(at) ? at : undefined
		}
		const sets = number(0)
		const reps = number(3)
		const isSets = /^(sets?|times)$/.test(view.word(1)) && ['of', 'x'].includes(view.word(2))
		return view.isTraining && isSets && sets !== undefined && reps !== undefined ? { take: 4, put: [sets, 'x', reps] } : undefined
	},
}

/** `3 by 8` */
const by: ShorthandRule = {
	begins: ['by'],
	read: view => (view.isTraining && view.isNumberBefore() && view.isNumber(1) ? { take: 1, put: ['x'] } : undefined),
}

/** `sets 3 reps 8`, `Sets: 3, Reps: 8` */
const namedNumbers: ShorthandRule = {
	begins: ['sets'],
	read: view => {
		const isJoint = (at: number) => view.word(at) === ':' || view.word(at) === ','
		const sets = isJoint(1) ? 2 : 1
		const reps = isJoint(view.afterRange(sets)) ? view.afterRange(sets) + 1 : view.afterRange(sets)
		const count = isJoint(reps + 1) ? reps + 2 : reps + 1
		if (!view.isTraining || !view.isNumber(sets) || view.word(reps) !== 'reps' || !view.isNumber(count)) return undefined
		const range = (from: number) => Array.from({ length: view.afterRange(from) - from }, (_, index) => from + index)
		return { take: view.afterRange(count), put: [...range(sets), 'x', ...range(count)] }
	},
}

/** `3 8 70%`, `3 | 8`: cells of a table, the sets before the reps. */
const cells: ShorthandRule = {
	begins: ['0'],
	read: view => {
		const isFirst = view.isTraining && ['ID', 'OTHER_NAME', ':'].includes(view.before()) && !view.startsLine()
		const after = view.afterRange()
		const reps = view.word(after) === '|' ? after + 1 : after
		if (!isFirst || view.kind === 'log' || view.isTight(reps) || !view.isNumber(reps) || view.startsLine(reps)) return undefined
		const behind = view.afterRange(reps)
		const isCount = view.unit(behind) === undefined && !view.isTimes(behind) && view.word(behind) !== '/'
		const range = Array.from({ length: after }, (_, index) => index)
		return isCount ? { take: reps, put: [...range, 'x'] } : undefined
	},
}

/** The lines between the cells of a table. */
const cellBorder: ShorthandRule = {
	begins: ['|'],
	read: view => (view.isTraining && !view.startsLine() ? { take: 1, put: [] } : undefined),
}

/** `5 @ 100 kg`, `5 reps`: one set. */
const oneSet: ShorthandRule = {
	begins: ['0'],
	read: view => {
		const isFirst = ['ID', 'OTHER_NAME', ':'].includes(view.before()) && !view.startsLine()
		if ((view.kind !== 'block' && view.kind !== 'plan') || !isFirst) return undefined
		const after = view.afterRange()
		const isReps = ['reps', 'rep'].includes(view.unit(after) ?? '') || ['@', 'at'].includes(view.word(after))
		const range = Array.from({ length: after }, (_, index) => index)
		return isReps ? { take: after, put: ['1', 'x', ...range] } : undefined
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
		if (!view.isTraining || view.before() === 'to' || view.word(1) === 'hold') return undefined
		if (view.before() === 'TIMES') return put('1', 'or', 'more')
		if (view.word() === 'failure') return undefined
		if (!view.followsWork) return undefined
		// As many as possible in a time.
		if (view.before() === 's' || view.before() === 'min') return put('for', 'reps')
		return view.before() === 'more' ? put() : put('or', 'more')
	},
}

/** `plank AMRAP`, `plank max reps`; `plank AMRAP 10 min`, `plank AMRAP in 10 min`: one set. */
const amrapAlone: ShorthandRule = {
	begins: asManyAsPossible,
	read: view => {
		const isFirst = ['ID', 'OTHER_NAME', ':'].includes(view.before()) && !view.startsLine()
		if (!view.isTraining || view.kind === 'log' || !isFirst || view.word() === 'failure') return undefined
		const from = view.word(1) === 'in' || view.word(1) === ':' || /^reps?$/.test(view.word(1)) ? 2 : 1
		const unit = view.unit(from + 1)
		if (view.isNumber(from) && (unit === 'min' || unit === 's') && view.word(from + 2) !== 'rest')
			return { take: from + 2, put: ['1', 'x', from, unit, 'for', 'reps'] }
		const take = /^reps?$/.test(view.word(1)) ? 2 : 1
		return view.word() === 'max' && take === 1 ? undefined : { take, put: ['1', 'x', '1', 'or', 'more'] }
	},
}

/** `10 min AMRAP`: one set. */
const timedAmrap: ShorthandRule = {
	begins: ['0'],
	read: view => {
		const isFirst = ['ID', 'OTHER_NAME', ':'].includes(view.before()) && !view.startsLine()
		const unit = view.unit(1)
		return view.isTraining && isFirst && (unit === 'min' || unit === 's') && view.word(2) === 'amrap'
			? { take: 3, put: ['1', 'x', 0, unit, 'for', 'reps'] }
			: undefined
	},
}

/** `3 x to failure`: as many as it takes. */
const onlyToFailure: ShorthandRule = {
	begins: ['to'],
	read: view =>
		view.isTraining && view.before() === 'TIMES' && view.word(1) === 'failure'
			? { take: 2, put: ['1', 'or', 'more'] }
			: undefined,
}

/** `3 x 5 until failure`, `3 x 5 @ failure` */
const toFailure: ShorthandRule = {
	begins: ['til', 'till', 'until', '@', 'at'],
	read: view =>
		view.isTraining && view.followsWork && view.word(1) === 'failure' ? { take: 2, put: ['to', 'failure'] } : undefined,
}

/** `3x8 each`, `3 x 8 ea side`, `10 per leg`, `10/side`, `10 p/s`, `10 L/R` */
const sides: ShorthandRule = {
	begins: ['each', 'ea', 'per', '/', 'both', 'a', 'p', 'e', 'l', 'r', 'ps', 'es'],
	read: view => {
		if (!view.isTraining || view.type() === 'EACH_SIDE' || !view.followsAnEnding || view.startsLine()) return undefined
		const dot = view.word(1) === '.' ? 1 : 0
		if (limbs.has(view.word(1 + dot))) return { take: 2 + dot, put: eachSide }
		if (shortSides.has(view.word() + view.word(1) + view.word(2))) return { take: 3, put: eachSide }
		if (view.word() === 'ps' || view.word() === 'es') return { take: 1, put: eachSide }
		// Behind a load it may be the load of each hand.
		if (masses.has(view.before())) return undefined
		const stands = (view.word() === 'each' && !['week', 'session', 'time'].includes(view.word(1))) || view.word() === 'ea'
		return stands ? { take: 1 + dot, put: eachSide } : undefined
	},
}

/** `4 x 5 at 70% 3 x 3 at 80%`: groups of sets have a comma between them. */
const missingComma: ShorthandRule = {
	begins: ['0'],
	read: view =>
		view.isTraining &&
		view.followsAnEnding &&
		!['most', 'rest'].includes(view.before()) &&
		view.before(2) !== 'week' &&
		view.isTimes(view.afterRange()) &&
		!view.startsLine()
			? { take: 1, put: [',', 0] }
			: undefined,
}

/** `1 x 5 at 80% then 2 x 5 at 70%`, `3 x 5 + 1 x 5+`, `3x5/1x5+`: groups of sets have a comma between them. */
const then: ShorthandRule = {
	begins: ['then', 'and', '+', '/', '&', ','],
	read: view => {
		const isTwo = view.word() === ',' && (view.word(1) === 'then' || view.word(1) === 'and')
		if (view.word() === ',' && !isTwo) return undefined
		const length = isTwo ? 2 : 1
		return view.isTraining && view.followsAnEnding && view.isTimes(view.afterRange(length)) && !view.startsLine(length)
			? { take: length, put: [','] }
			: undefined
	},
}

/** `top set 1 x 3, back off 3 x 5`: what the sets are for is plain from their loads. */
const setNames: ShorthandRule = {
	begins: ['top', 'back', 'backoff', 'back-off', 'backoffs'],
	read: view => {
		const length = view.word() === 'top' || view.word() === 'back' ? 2 : 1
		const sets = /^sets?$/.test(view.word(length)) && view.word() !== 'top' ? length + 1 : length
		const isName = view.word() === 'top' ? view.word(1) === 'set' : length === 1 || /^offs?$/.test(view.word(1))
		const after = view.word(sets) === ':' ? sets + 1 : sets
		const isBefore = ['ID', 'OTHER_NAME', ':', ','].includes(view.before()) && !view.startsLine()
		return view.isTraining && isName && isBefore && view.isTimes(view.afterRange(after)) ? { take: after, put: [] } : undefined
	},
}

/** `8/8/7 at 80 kg`: sets of a log. */
const slashList: ShorthandRule = {
	begins: ['/'],
	read: view => (view.kind === 'log' && view.isNumberBefore() && view.isNumber(1) ? { take: 1, put: [','] } : undefined),
}

/** `10/8/6`, `12, 10, 8, 6`, `5/3/1+`: a set of each, all with the clause that follows. */
const repList: ShorthandRule = {
	begins: ['0'],
	read: view => {
		const isFirst = ['ID', 'OTHER_NAME', ':'].includes(view.before()) && !view.startsLine()
		if ((view.kind !== 'block' && view.kind !== 'plan') || !isFirst) return undefined
		const sign = view.word(1)
		if (sign !== '/' && sign !== ',') return undefined
		const reps = [0]
		let at = 1
		while (view.word(at) === sign && view.isNumber(at + 1)) {
			reps.push(at + 1)
			at += 2
		}
		if (reps.length < 2 || view.isTimes(at) || reps.some(one => !/^\d{1,2}$/.test(view.word(one)))) return undefined
		const isOpen = view.word(at) === '+' && view.isTight(at)
		if (isOpen) at++
		const clause = simpleClause(view, at)
		if (!clause) return undefined
		const put = reps.flatMap((one, index) => {
			const open = isOpen && index === reps.length - 1 ? ['or', 'more'] : []
			return [...(index > 0 ? [','] : []), '1', 'x', one, ...open, ...clause.put]
		})
		return { take: clause.end, put }
	},
}

/** The one load or effort between a place and the end of its line; nothing, where the line ends there. */
function simpleClause(view: View, from: number): { readonly put: readonly Put[]; readonly end: number } | undefined {
	const endsAt = (at: number) => view.type(at) === '' || view.startsLine(at)
	if (endsAt(from)) return { put: [], end: from }
	const number = view.word(from) === '@' || view.word(from) === 'at' ? from + 1 : from
	const after = view.afterRange(number)
	if (after === number) return undefined
	const range = Array.from({ length: after - number }, (_, index) => number + index)
	const unit = view.unit(after)
	const isLoad = unit === 'kg' || unit === 'lb' || unit === '%'
	if (isLoad && endsAt(after + 1)) return { put: ['at', ...range, unit], end: after + 1 }
	return view.word(from) === '@' && view.value(number) <= 10 && endsAt(after) ? { put: ['rpe', ...range], end: after } : undefined
}

/** `10/10/10` beside a movement is no date. */
const dateList: ShorthandRule = {
	begins: ['a-date'],
	read: view => {
		const numbers = view.word().split('/')
		const isFirst = ['ID', 'OTHER_NAME', ','].includes(view.before()) || (view.before() === ':' && view.kind === 'block')
		if (!view.isTraining || numbers.length !== 3 || !isFirst) return undefined
		const comma = (index: number) => (index > 0 ? [','] : [])
		const number = (image: string) => ({ type: 'NUMBER', image })
		if (view.kind === 'log') return { take: 1, put: numbers.flatMap((image, index) => [...comma(index), number(image)]) }
		const clause = simpleClause(view, 1)
		const put = numbers.flatMap((image, index) => [...comma(index), '1', 'x', number(image), ...(clause?.put ?? [])])
		return clause && { take: clause.end, put }
	},
}

export const setRules = [
	setsOf,
	inWords,
	by,
	namedNumbers,
	repList,
	timedAmrap,
	oneSet,
	cells,
	cellBorder,
	plus,
	amrapAlone,
	amrap,
	onlyToFailure,
	toFailure,
	sides,
	missingComma,
	then,
	setNames,
	slashList,
	dateList,
]
