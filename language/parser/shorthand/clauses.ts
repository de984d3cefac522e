import type { Put, ShorthandRule, View } from './view.ts'

const clauseWords = new Set(['@', '＠', 'at', 'rpe', 'rir', 'tempo', 'rest', 'each', 'ea', 'with', 'w/'])

const scales = new Set(['rpe', 'rir'])

/** How many tokens from a place on are a time with `rest` behind it, that word included: `90s rest`, `2 min 30 s rest`. */
function restBehind(view: View, from: number): number {
	const by = afterTime(view, from)
	return by > from && view.word(by) === 'rest' && !view.isNumber(by + 1) ? by + 1 - from : 0
}

/** Where the time that begins at a place ends: `90 s`, `2 min 30 s`, `2-3 min`; the place itself if none does. */
function afterTime(view: View, from: number): number {
	let by = from
	const isTime = (at: number) =>
		view.isNumber(at) && (view.unit(view.afterRange(at)) === 's' || view.unit(view.afterRange(at)) === 'min')
	while (isTime(by)) by = view.afterRange(by) + 1
	return by
}

/** The tokens of a stretch as they are, units in our spelling. */
function timeIn(view: View, from: number, to: number): Put[] {
	return Array.from({ length: to - from }, (_, index) => {
		const at = from + index
		return view.isNumber(at) ? at : (view.unit(at) ?? at)
	})
}

/** `90s rest`, `2 min rest` */
const restLast: ShorthandRule = {
	begins: ['0'],
	read: view => {
		const length = ['TIMES', 'rest', 'DASH'].includes(view.before()) ? 0 : restBehind(view, 0)
		if (!view.isTraining || length === 0) return undefined
		return { take: length, put: ['rest', ...timeIn(view, 0, length - 1)] }
	},
}

/** A time as short as this, behind reps, may be a pause or a hold. */
const shortestRest = 20

/** `4 x 5, 90 s`, `8 x 20 s / 10 s`, `3 x 30 s on / 30 s off`: a second time is the rest. */
const bareRest: ShorthandRule = {
	begins: ['0', ',', '/', 'on', 'off'],
	read: view => {
		if (!view.isTraining) return undefined
		const isTimed = view.before() === 's' || view.before() === 'min'
		if (view.word() === 'off') return isTimed && view.wordBefore(3) === 'rest' ? { take: 1, put: [] } : undefined
		let from = view.word() === 'on' && isTimed && (view.isNumber(1) || view.isNumber(2)) ? 1 : 0
		if ([',', '/'].includes(view.word(from)) && (from === 0 || isTimed)) from++
		const after = afterTime(view, from)
		if (after === from || view.startsLine(from) || !view.followsAnEnding || view.isTimes(after)) return undefined
		const isWhole = after === from + 2
		const isLong = view.unit(from + 1) === 'min' || view.value(from) >= shortestRest
		const isRest = view.followsWork ? isLong || (isTimed && from > 0) : isLong && view.word(0) !== '/' && !isTimed
		if (!isWhole || !isRest || view.word(after) === 'rest' || view.word(after) === 'pause') return undefined
		return { take: after, put: ['rest', ...timeIn(view, from, after)] }
	},
}

/** `rest 2 to 3 min` */
const restRange: ShorthandRule = {
	begins: ['to'],
	read: view => {
		const hasUnit = view.before() === 's' || view.before() === 'min'
		return view.before(hasUnit ? 3 : 2) === 'rest' && view.isNumber(1)
			? { take: 1, put: [{ type: 'DASH', image: '-' }] }
			: undefined
	},
}

/** `4 x 5 r 90 s`, `4 x 5 r=90s`, `RI: 90 s` */
const shortRest: ShorthandRule = {
	begins: ['r', 'ri'],
	read: view => {
		const sign = view.word(1) === ':' || view.word(1) === '=' ? 1 : 0
		const isRest = view.isTraining && view.followsAnEnding && afterTime(view, 1 + sign) > 1 + sign
		return isRest ? { take: 1 + sign, put: ['rest'] } : undefined
	},
}

/** `4 x 5 - rest 90 s`: a dash between what belongs together. */
const dashBeforeClause: ShorthandRule = {
	begins: ['-', '–', '—'],
	read: view => {
		if (!view.isTraining || !view.followsAnEnding || view.isTight() || view.isTight(1) || view.startsLine()) return undefined
		return clauseWords.has(view.word(1)) || restBehind(view, 1) > 0 ? { take: 1, put: [] } : undefined
	},
}

/** `rest 2:00`, `3 x 1:30`, `held 1:15`, `50 m in 1:04.5` */
const clockTime: ShorthandRule = {
	begins: ['0'],
	read: view => {
		const isTime = ['rest', 'TIMES', 'held', 'for', 'in'].includes(view.before()) && view.word(1) === ':'
		if (!isTime || !view.isTight(1) || !view.isTight(2) || !/^[0-5]\d(\.\d+)?$/.test(view.word(2))) return undefined
		const seconds = view.value(2)
		return { take: 3, put: seconds === 0 ? [0, 'min'] : [0, 'min', { type: 'NUMBER', image: String(seconds) }, 's'] }
	},
}

/** `w/ 60s rest`, `with 100 kg`, `w/ RPE 8` */
const withClause: ShorthandRule = {
	begins: ['with', 'w/'],
	read: view => {
		if (!view.isTraining || !view.followsAnEnding) return undefined
		if (clauseWords.has(view.word(1)) || restBehind(view, 1) > 0) return { take: 1, put: [] }
		const after = view.afterRange(1)
		if (after > 1 && scales.has(view.word(after))) return { take: 1, put: [] }
		const unit = view.unit(after)
		const isLoad = unit === 'kg' || unit === 'lb' || (unit === '%' && view.followsWork)
		const isBare = view.isNumber(1) && view.followsWork && (view.type(after) === '' || view.startsLine(after))
		return isLoad || isBare ? { take: 1, put: ['at'] } : undefined
	},
}

/** `4 x 5, rpe 8`, `4 x 5, 90 s rest`, `4 x 5, 70%`: a comma stands between groups of sets only. */
const commaBeforeClause: ShorthandRule = {
	begins: [',', ';', '，'],
	read: view => {
		if (!view.isTraining || !view.followsAnEnding) return undefined
		if (clauseWords.has(view.word(1)) && !view.startsLine(1) && !isChange(view)) return { take: 1, put: [] }
		if (restBehind(view, 1) > 0) return { take: 1, put: [] }
		const unit = view.unit(view.afterRange(1))
		if ((view.kind !== 'log' || view.followsWork) && (unit === 'kg' || unit === 'lb' || unit === '%'))
			return { take: 1, put: ['at'] }
		return view.word() === ',' ? undefined : { take: 1, put: [','] }
	},
}

/** `tempo 4110`, `tempo 31X0`, `tempo 4/1/1/0` */
const tempo: ShorthandRule = {
	begins: ['a-tempo'],
	read: view => {
		const parts = view.word().replace(/[/.:]/g, '').split('')
		const take = view.before() !== 'tempo' && view.word(1) === 'tempo' ? 2 : 1
		return { take, put: [...(view.before() === 'tempo' ? [] : ['tempo']), { type: 'TEMPO', image: parts.join('-') }] }
	},
}

/** `4 x 5 3-0-x-1`: a tempo without its word. */
const bareTempo: ShorthandRule = {
	begins: ['a-whole-tempo'],
	read: view => (view.isTraining && view.followsAnEnding && !view.startsLine() ? { take: 1, put: ['tempo', 0] } : undefined),
}

/** `T: 3010` */
const shortTempoWord: ShorthandRule = {
	begins: ['t'],
	read: view => {
		const sign = view.word(1) === ':' ? 1 : 0
		return view.isTraining && ['SHORT_TEMPO', 'TEMPO'].includes(view.type(1 + sign))
			? { take: 1 + sign, put: ['tempo'] }
			: undefined
	},
}

/** `each week`, `each session` and `each time` are no sides. */
function isChange(view: View): boolean {
	return view.word(1) === 'each' && ['week', 'session', 'time'].includes(view.word(2))
}

export const clauseRules = [
	restLast,
	bareRest,
	shortRest,
	restRange,
	clockTime,
	withClause,
	commaBeforeClause,
	dashBeforeClause,
	tempo,
	bareTempo,
	shortTempoWord,
]
