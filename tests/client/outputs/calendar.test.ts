import ICAL from 'ical.js'
import { describe, expect, it } from 'vitest'
import { calendar } from '../../../client/outputs/calendar.ts'
import { readerOf } from '../../../client/views/reader/reader.ts'
import { loadOf } from '../../../client/views/sheet/wording.ts'
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

	it('is the same each time', () => expect(calendar(picture(), null)).toBe(calendar(picture(), null)))

	it('of a plan without a session holds no event', () => {
		expect(eventsOf(calendar(withoutSessions(), null))).toEqual([])
	})
})
