import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { addDays, daysBetween, isRealDate, mondayOf, weekdayIndex, weekdayOf } from '../../../language/compute/calendar.ts'
import { weekdays } from '../../../language/model/quantities.ts'

const days = fc.integer({ min: -40_000, max: 60_000 })
const date = days.map(day => addDays('2026-10-05', day))

describe('isRealDate', () => {
	test.each(['2026-10-05', '2024-02-29', '2000-02-29', '2026-12-31', '1900-01-01', '2999-12-31'])('%s is', text => {
		expect(isRealDate(text)).toBe(true)
	})

	test.each([
		'2026-02-29',
		'1900-02-29',
		'2100-02-29',
		'2026-04-31',
		'2026-13-01',
		'2026-00-10',
		'2026-10-00',
		'2026-10-32',
		'0026-10-05',
		'3026-10-05',
		'2026-1-5',
		'5.10.2026',
		'2026-10-05T00:00',
		'',
	])('"%s" is not', text => {
		expect(isRealDate(text)).toBe(false)
	})
})

describe('days', () => {
	test.each([
		['2026-02-28', 1, '2026-03-01'],
		['2024-02-28', 1, '2024-02-29'],
		['2026-12-31', 1, '2027-01-01'],
		['2026-01-01', -1, '2025-12-31'],
		// Clocks change in these weeks in many places; the calendar does not.
		['2026-03-28', 2, '2026-03-30'],
		['2026-10-24', 2, '2026-10-26'],
		['2026-10-05', 0, '2026-10-05'],
	])('%s and %i days is %s', (from, count, to) => {
		expect(addDays(from, count)).toBe(to)
		expect(daysBetween(from, to)).toBe(count)
	})

	test('adding is undone by taking off, and counted by the days between', () => {
		fc.assert(
			fc.property(date, days, (from, count) => {
				const to = addDays(from, count)
				expect(addDays(to, -count)).toBe(from)
				expect(daysBetween(from, to)).toBe(count)
				expect(daysBetween(to, from)).toBe(0 - count)
			}),
		)
	})

	test('dates compare as texts', () => {
		fc.assert(
			fc.property(date, date, (a, b) => {
				expect(a < b).toBe(daysBetween(a, b) > 0)
			}),
		)
	})
})

describe('weekdays', () => {
	test.each([
		['2026-10-05', 'monday'],
		['2026-10-11', 'sunday'],
		['1900-01-01', 'monday'],
		['1969-12-31', 'wednesday'],
		['1970-01-01', 'thursday'],
		['2000-02-29', 'tuesday'],
	])('%s is a %s', (day, weekday) => {
		expect(weekdayOf(day)).toBe(weekday)
	})

	test('monday comes first, sunday last', () => {
		expect(weekdays.map(weekdayIndex)).toEqual([0, 1, 2, 3, 4, 5, 6])
	})

	test('the monday of a date is a monday, at most six days before', () => {
		fc.assert(
			fc.property(date, day => {
				const monday = mondayOf(day)
				expect(weekdayOf(monday)).toBe('monday')
				expect(daysBetween(monday, day)).toBe(weekdayIndex(weekdayOf(day)))
			}),
		)
	})
})
