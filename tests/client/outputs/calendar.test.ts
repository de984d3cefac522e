import ICAL from 'ical.js'
import { describe, expect, it } from 'vitest'
import type { BeginTime } from '../../../client/outputs/begin-times.ts'
import { calendar } from '../../../client/outputs/calendar.ts'
import { readerOf } from '../../../client/views/reader/reader.ts'
import { loadOf } from '../../../client/views/sheet/wording.ts'
import { partsOfDay } from '../../../language/model/quantities.ts'
import type { SheetSession } from '../../../language/reports/load-sheet.ts'
import { clubPictures } from '../views/support/club.ts'
import { picture, session, sheet } from '../views/support/invented.ts'
import { awkward, dressedIn, withoutSessions } from './support/awkward.ts'

// The calendar's name came with RFC 7986, after this parser's own list.
for (const name of ['name', 'x-wr-calname']) ICAL.design.icalendar.property[name] = { defaultType: 'text' }

const read = (text: string) => new ICAL.Component(ICAL.parse(text))
const eventsOf = (text: string) => read(text).getAllSubcomponents('vevent')
const value = (event: InstanceType<typeof ICAL.Component>, property: string) => String(event.getFirstPropertyValue(property))

describe('the plan as a calendar', () => {
	it.each([...clubPictures()])('%s: one event a session, all day, with its loads', (_, one) => {
		const events = eventsOf(calendar(one, null))
		const { sessions } = one.sheet!
		expect(events).toHaveLength(sessions.length)
		for (const [index, event] of events.entries()) {
			const { date, items } = sessions[index]!
			const start = event.getFirstPropertyValue('dtstart') as InstanceType<typeof ICAL.Time>
			expect([start.isDate, start.toString()]).toEqual([true, date])
			const end = event.getFirstPropertyValue('dtend') as InstanceType<typeof ICAL.Time>
			expect(end.subtractDate(start).toSeconds()).toBe(86_400)
			expect(value(event, 'dtstamp')).toBe(`${date}T00:00:00Z`)
			const text = value(event, 'description')
			for (const item of items) {
				expect(text).toContain(item.title)
				for (const set of item.sets) {
					const load = loadOf(set, item, readerOf(null))?.replaceAll('\u00a0', ' ')
					if (load) expect(text).toContain(load)
				}
			}
			expect(text).toContain('no medical advice')
		}
		const ids = events.map(event => value(event, 'uid'))
		expect(new Set(ids).size).toBe(ids.length)
	})

	it.each(Object.entries(awkward))('carries %s', (_, text) => {
		const file = calendar({ ...dressedIn(text), cautions: [text] }, null)
		const [event] = eventsOf(file)
		expect(value(event!, 'summary')).toBe(text)
		expect(value(event!, 'location')).toBe(text)
		expect(value(event!, 'description').split(text).length - 1).toBeGreaterThanOrEqual(5)
		for (const name of ['name', 'x-wr-calname'])
			expect(String(read(file).getFirstPropertyValue(name))).toContain(text.split('\n')[0]!)
	})

	it.each(Object.entries(awkward))('folds lines at 75 octets at most, and between letters, with %s', (_, text) => {
		const file = calendar({ ...dressedIn(text), cautions: [] }, null)
		const lines = file.split('\r\n')
		expect(lines.pop()).toBe('')
		for (const line of lines) {
			expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75)
			expect(line.isWellFormed()).toBe(true)
			expect(line).not.toMatch(/[\r\n]/)
		}
	})

	it('takes steering characters out, which the format does not allow', () => {
		const file = calendar(
			picture({ sheet: sheet([session({ title: 'Heavy\u0000 \u001b[31mpull\u007f', notes: ['a\r\nb'] })]) }),
			null,
		)
		const [event] = eventsOf(file)
		expect(value(event!, 'summary')).toBe('Heavy [31mpull')
		expect(value(event!, 'description')).toContain('a\nb')
	})

	it('says which part of the day it is', () => {
		const [event] = eventsOf(calendar(picture({ sheet: sheet([session({ title: 'Pull', part: 'evening' })]) }), null))
		expect(value(event!, 'summary')).toBe('Pull (evening)')
	})

	describe('with the times at which sessions begin', () => {
		const plainly: BeginTime = { weekday: null, part: null, minutes: 17 * 60 + 30 }
		const morning: BeginTime = { weekday: null, part: 'morning', minutes: 7 * 60 }
		const saturday: BeginTime = { weekday: 'saturday', part: null, minutes: 10 * 60 }
		const calendarOf = (sessions: readonly SheetSession[], times: readonly BeginTime[]) =>
			calendar(picture({ sheet: sheet(sessions) }), null, times)
		const timesOf = (sessions: readonly SheetSession[], times: readonly BeginTime[]) =>
			eventsOf(calendarOf(sessions, times)).map(event => [value(event, 'dtstart'), value(event, 'dtend')])

		it('has no zone and no offset, and is busy for as long as the session is estimated to last', () => {
			const file = calendarOf([session({ minutes: 41 })], [plainly])
			// 17:30 and 41 minutes.
			for (const line of ['DTSTART:20261005T173000', 'DTEND:20261005T181100', 'TRANSP:OPAQUE'])
				expect(file.split('\r\n')).toContain(line)
			const [event] = eventsOf(file)
			const start = event!.getFirstPropertyValue('dtstart') as InstanceType<typeof ICAL.Time>
			expect([start.isDate, start.zone?.tzid]).toEqual([false, 'floating'])
			expect(file).not.toContain('TZID')
		})

		it('counts by the clock on the days on which it is put back or forward', () => {
			for (const date of ['2026-10-25', '2026-11-01', '2027-03-14', '2027-03-28'])
				expect(timesOf([session({ date, minutes: 60 })], [{ ...plainly, minutes: 90 }])).toEqual([
					[`${date}T01:30:00`, `${date}T02:30:00`],
				])
		})

		it('goes over midnight, the end of a month and of a year', () => {
			const late = { ...plainly, minutes: 23 * 60 + 30 }
			expect(timesOf([session({ date: '2026-12-31', minutes: 75 })], [late])).toEqual([
				['2026-12-31T23:30:00', '2027-01-01T00:45:00'],
			])
			expect(timesOf([session({ date: '2028-02-28', minutes: 30 })], [late])).toEqual([
				['2028-02-28T23:30:00', '2028-02-29T00:00:00'],
			])
		})

		it('leaves a session all day whose part of the day has no time', () => {
			const sessions = [session({ id: 'a', part: 'morning' }), session({ id: 'b' }), session({ id: 'c', part: 'evening' })]
			expect(timesOf(sessions, [plainly])).toEqual([
				['2026-10-05', '2026-10-06'],
				['2026-10-05T17:30:00', '2026-10-05T18:11:00'],
				['2026-10-05', '2026-10-06'],
			])
			expect(timesOf(sessions, [morning])).toEqual([
				['2026-10-05T07:00:00', '2026-10-05T07:41:00'],
				['2026-10-05', '2026-10-06'],
				['2026-10-05', '2026-10-06'],
			])
			const transparencies = eventsOf(calendarOf(sessions, [plainly])).map(event => value(event, 'transp'))
			expect(transparencies).toEqual(['TRANSPARENT', 'OPAQUE', 'TRANSPARENT'])
		})

		it('takes the time of the weekday before that of all days, and never one of another part of the day', () => {
			const sessions = [
				session({ id: 'a', date: '2026-10-09', weekday: 'friday' }),
				session({ id: 'b', date: '2026-10-10', weekday: 'saturday', part: 'morning' }),
				session({ id: 'c', date: '2026-10-10', weekday: 'saturday' }),
			]
			for (const times of [
				[plainly, saturday],
				[saturday, plainly],
			])
				expect(timesOf(sessions, times).map(([start]) => start)).toEqual([
					'2026-10-09T17:30:00',
					'2026-10-10',
					'2026-10-10T10:00:00',
				])
		})

		it('lets sessions that would begin together follow one another, and no others', () => {
			const day = [session({ id: 'a', minutes: 41 }), session({ id: 'b', minutes: 20 }), session({ id: 'c', minutes: 5 })]
			const next = session({ id: 'd', date: '2026-10-06', weekday: 'tuesday' })
			// 17:30, 41 minutes later, 20 minutes later.
			expect(timesOf([...day, next], [plainly]).map(([start]) => start)).toEqual([
				'2026-10-05T17:30:00',
				'2026-10-05T18:11:00',
				'2026-10-05T18:31:00',
				'2026-10-06T17:30:00',
			])
			const evening: BeginTime = { weekday: null, part: 'evening', minutes: 17 * 60 + 45 }
			const two = [session({ id: 'a' }), session({ id: 'b', part: 'evening' })]
			expect(timesOf(two, [plainly, evening]).map(([start]) => start)).toEqual(['2026-10-05T17:30:00', '2026-10-05T17:45:00'])
		})

		it('gives a session that takes no minute a beginning alone, since an end would have to be later', () => {
			const [event] = eventsOf(calendarOf([session({ minutes: 0 })], [plainly]))
			expect(value(event!, 'dtstart')).toBe('2026-10-05T17:30:00')
			expect(event!.getFirstProperty('dtend')).toBeNull()
		})

		it.each([...clubPictures()])('%s: only the times change', (_, one) => {
			const all = ([{ weekday: null, part: null }, ...partsOfDay.map(part => ({ weekday: null, part }))] as const).map(
				(day, index) => ({ ...day, minutes: 360 + 400 * index }),
			)
			const withoutTimes = (file: string) => file.replace(/^(DTSTART|DTEND|TRANSP|X-MICROSOFT)[^\r]*\r\n/gm, '')
			const timed = calendar(one, null, all)
			expect(withoutTimes(timed)).toBe(withoutTimes(calendar(one, null)))
			for (const [index, event] of eventsOf(timed).entries()) {
				const { date, minutes } = one.sheet!.sessions[index]!
				const start = event.getFirstPropertyValue('dtstart') as InstanceType<typeof ICAL.Time>
				const end = event.getFirstPropertyValue('dtend') as InstanceType<typeof ICAL.Time>
				expect(start.toString().slice(0, 10)).toBe(date)
				expect(end.subtractDate(start).toSeconds()).toBe(60 * minutes)
			}
			for (const line of timed.split('\r\n')) expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75)
		})
	})

	it('is the same each time', () => expect(calendar(picture(), null)).toBe(calendar(picture(), null)))

	it('of a plan without a session holds no event', () => {
		expect(eventsOf(calendar(withoutSessions(), null))).toEqual([])
	})
})
