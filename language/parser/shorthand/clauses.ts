import type { ShorthandRule, View } from './view.ts'

const clauseWords = new Set(['@', '＠', 'at', 'rpe', 'rir', 'tempo', 'rest', 'each', 'ea', 'with', 'w/'])

/** How many tokens from a place on are a time with `rest` behind it, that word included: `90s rest`, `2 min 30 s rest`. */
function restBehind(view: View, from: number): number {
	let by = from
	while (view.isNumber(by) && (view.unit(by + 1) === 's' || view.unit(by + 1) === 'min')) by += 2
	return by > from && view.word(by) === 'rest' && !view.isNumber(by + 1) ? by + 1 - from : 0
}

/** `90s rest`, `2 min rest` */
const restLast: ShorthandRule = {
	begins: ['0'],
	read: view => {
		const length = ['TIMES', 'rest', 'DASH'].includes(view.before()) ? 0 : restBehind(view, 0)
		if (!view.isTraining || length === 0) return undefined
		const time = Array.from({ length: length - 1 }, (_, index) => (index % 2 === 0 ? index : view.unit(index)!))
		return { take: length, put: ['rest', ...time] }
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
		const unit = view.unit(view.afterRange(1))
		return unit === 'kg' || unit === 'lb' || (unit === '%' && view.followsWork) ? { take: 1, put: ['at'] } : undefined
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
		return { take: 1, put: [...(view.before() === 'tempo' ? [] : ['tempo']), { type: 'TEMPO', image: parts.join('-') }] }
	},
}

/** `each week`, `each session` and `each time` are no sides. */
function isChange(view: View): boolean {
	return view.word(1) === 'each' && ['week', 'session', 'time'].includes(view.word(2))
}

export const clauseRules = [restLast, clockTime, withClause, commaBeforeClause, tempo]
