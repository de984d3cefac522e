import { daysBetween, isRealDate } from '../../compute/calendar.ts'
import { monthOf } from '../../spelling/months.ts'
import type { Put, ShorthandRule, View } from './view.ts'

/** After these stands a date. */
const beforeDates = new Set(['on', 'start', 'meet', 'from', 'until', 'before', 'pause', 'to'])

/** A day and a month, in the orders in which they may be meant; the likelier one first. */
type DayAndMonth = readonly [day: number, month: number]

/**
 * A date without its year, in the year that another date of the definition makes the likeliest. Where it has no other date, nobody can
 * know; the year is asked for.
 */
function withYear(view: View, take: number, days: readonly DayAndMonth[]): { take: number; put: Put[] } | undefined {
	if (days.length === 0) return undefined
	const near = view.nearestDate
	const real = days.flatMap(one => (near === undefined ? [] : (yearFor(one, near, view.kind === 'plan') ?? [])))
	return { take, put: [{ type: 'OTHER_DATE', image: real[0] ?? '', others: real.slice(1), unsettled: true }] }
}

/** The day in the year in which it is nearest to a date; a plan's days lie behind its first date. */
function yearFor([day, month]: DayAndMonth, near: string, isLater: boolean): string | undefined {
	const year = Number(near.slice(0, 4))
	const written = (of: number) => `${of}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`
	const dates = [year - 1, year, year + 1].map(written).filter(date => isRealDate(date) && (!isLater || date >= near))
	return dates.sort((one, other) => Math.abs(daysBetween(near, one)) - Math.abs(daysBetween(near, other)))[0]
}

/** `12/19`, `19.12.` */
const inNumbers: ShorthandRule = {
	begins: ['0'],
	read: view => {
		if (!isDatePlace(view)) return undefined
		const dotted = /^(\d{1,2})\.(\d{1,2})$/.exec(view.word())
		if (dotted) {
			const dot = view.word(1) === '.' && view.isTight(1) ? 2 : 1
			if (view.unit(dot) !== undefined) return undefined
			return withYear(view, dot, ordersOf(Number(dotted[1]), Number(dotted[2]), true))
		}
		const isSlashed = view.word(1) === '/' && view.isNumber(2) && /^\d{1,2}$/.test(view.word()) && /^\d{1,2}$/.test(view.word(2))
		return isSlashed ? withYear(view, 3, ordersOf(view.value(), view.value(2), false)) : undefined
	},
}

/** `19 Dec`, `19 December` */
const dayFirst: ShorthandRule = {
	begins: ['0'],
	read: view => {
		const month = monthOf(view.word(1))
		return isDatePlace(view) && month !== undefined && /^\d{1,2}$/.test(view.word())
			? withYear(view, 2, [[view.value(), month]])
			: undefined
	},
}

/** `Dec 19` */
const monthFirst: ShorthandRule = {
	begins: ['a-name'],
	read: view => {
		const month = monthOf(view.word())
		return isDatePlace(view) && month !== undefined && view.isNumber(1) ? withYear(view, 2, [[view.value(1), month]]) : undefined
	},
}

/** `best deadlift 160 kg 12.9.2026`: the word before the date is missing. */
const bareDate: ShorthandRule = {
	begins: ['a-date'],
	read: view => {
		const isBehindLoad = ['kg', 'lb', 'NUMBER'].includes(view.before())
		return view.kind === 'lifter' && isBehindLoad && !view.startsLine() ? { take: 1, put: ['on', 0] } : undefined
	},
}

/** `pause 2026-10-19 - 2026-11-01` */
const dashBetween: ShorthandRule = {
	begins: ['-', '–', '—'],
	read: view => {
		const isDate = (type: string) => type === 'DATE' || type === 'OTHER_DATE'
		return view.kind === 'plan' && isDate(view.before()) && (isDate(view.type(1)) || view.isNumber(1))
			? { take: 1, put: ['to'] }
			: undefined
	},
}

function isDatePlace(view: View): boolean {
	const isKind = ['plan', 'lifter', 'log'].includes(view.kind) && beforeDates.has(view.before())
	return isKind && (view.before() !== 'to' || ['DATE', 'OTHER_DATE'].includes(view.before(2)))
}

function ordersOf(first: number, second: number, isDayFirst: boolean): DayAndMonth[] {
	const orders: DayAndMonth[] = isDayFirst
		? [[first, second]]
		: [
				[first, second],
				[second, first],
			]
	return orders.filter(([day, month], index) => month <= 12 && day <= 31 && (index === 0 || first !== second))
}

export const dateRules = [inNumbers, dayFirst, monthFirst, bareDate, dashBetween]
