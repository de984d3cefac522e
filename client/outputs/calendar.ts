import ical, { escape as escapedText, type ICalEventData, ICalEventTransparency } from 'ical-generator'
import type { SheetItem, SheetSession } from '../../language/reports/load-sheet.ts'
import { generalCaution } from '../views/general-caution.ts'
import { type Reader, readerOf } from '../views/reader/reader.ts'
import { blockTitle, gymTitle, spokenName } from '../views/reader/words.ts'
import { foldSets } from '../views/sheet/fold.ts'
import { discsOf, effortOf, loadOf, percentOf, setsAndWork } from '../views/sheet/wording.ts'
import { type BeginTime, beginsOf } from './begin-times.ts'
import type { SheetContent } from './content.ts'

/**
 * The plan as an iCalendar file (RFC 5545): one event a session, at the time that is said for it, else all day, since a text gives a day,
 * perhaps its evening, and no clock time.
 *
 * An event's UID is made from names alone, so that a calendar which reads a later version of the plan changes its events and adds none.
 * What RFC 5545 wants as the time at which the file was made (DTSTAMP) is here the first moment of the event's own day: the same plan gives
 * the same file, whenever it is written. Neither has the hour in it: a session that moves within its day stays the same event.
 * @param locale BCP 47, for the numbers in the descriptions; `null` writes them as the language does.
 * @param times When sessions begin; a session lasts as long as it is estimated to.
 */
export function calendar(
	content: Omit<SheetContent, 'meets' | 'problems'>,
	locale: string | null,
	times: readonly BeginTime[] = [],
): string {
	const { title, lifterTitle, sheet, titles, cautions } = content
	const name = lifterTitle === null ? title : `${title} – ${lifterTitle}`
	const file = ical({
		// The library escapes what it writes, but for these.
		name: escapedText(plain(name), false),
		prodId: { company: 'Barstave', product: 'Barstave', language: 'EN' },
	})
	const reader = readerOf(locale)
	const sessions = sheet?.sessions ?? []
	const begins = beginsOf(sessions, times)
	for (const [index, session] of sessions.entries()) {
		file.createEvent({
			id: `${session.id.replaceAll('/', '.')}@${sheet!.lifter}.barstave`,
			stamp: minutesAfter(session.date, 0),
			...timeOf(session, begins[index]!),
			summary: plain(summary(session)),
			location: session.gym === null ? null : plain(gymTitle(titles, session.gym)),
			description: plain(description(session, { titles, cautions }, reader)),
		})
	}
	// The library leaves out the last line's end.
	return `${file.toString()}\r\n`
}

/**
 * All day, or from a time to another. A plan's days have no time zone, so their times have none either (RFC 5545, 3.3.5, form 1): they are
 * what the lifter's own clock shows, wherever that is and whether or not it has been put forward. A `Date` only carries them, as if in UTC.
 */
function timeOf({ date, minutes }: SheetSession, begin: number | null): Partial<ICalEventData> & Pick<ICalEventData, 'start'> {
	if (begin === null) {
		// A day with a session is not a day off: other meetings may stand in it.
		const transparency = ICalEventTransparency.TRANSPARENT
		return { start: minutesAfter(date, 0), end: minutesAfter(date, minutesOfDay), allDay: true, transparency }
	}
	return {
		start: minutesAfter(date, begin),
		// An end must be later than its beginning; an event without one takes no time.
		end: minutes === 0 ? null : minutesAfter(date, begin + minutes),
		floating: true,
		// At that time the lifter is at the bar, and at no other meeting.
		transparency: ICalEventTransparency.OPAQUE,
	}
}

const minutesOfDay = 24 * 60

function minutesAfter(date: string, minutes: number): Date {
	return new Date(Date.parse(`${date}T00:00:00Z`) + minutes * 60_000)
}

/** RFC 5545, 3.3.11: a text holds no control characters but tabs, and line breaks, which are escaped. */
const control = /(?![\t\n])\p{Cc}/gu

function plain(text: string): string {
	return text.replaceAll('\u00a0', ' ').replace(/\r\n?/g, '\n').replace(control, '')
}

/** `Heavy pull`, `Heavy pull (evening)`. */
function summary({ title, session, part }: SheetSession): string {
	return `${title ?? spokenName(session)}${part === null ? '' : ` (${part})`}`
}

/** What is done that day, line by line: calendars show plain text. */
function description(session: SheetSession, { titles, cautions }: Pick<SheetContent, 'titles' | 'cautions'>, reader: Reader) {
	const week = `Week ${reader.number(session.week)} of ${blockTitle(titles, session.block)}`
	const head = [week, ...(session.deload ? ['lighter week'] : []), `about ${reader.duration(session.minutes * 60)}`].join(', ')
	const parts = [
		[head, ...session.notes].join('\n'),
		session.items.map(item => itemLines(item, reader).join('\n')).join('\n'),
		[...cautions, generalCaution].join('\n'),
	]
	return parts.filter(part => part !== '').join('\n\n')
}

function itemLines(item: SheetItem, reader: Reader): string[] {
	const role = item.role === 'main' || item.role === 'accessory' ? '' : ` (${item.role})`
	const name = `${item.withItemAbove ? '+ ' : ''}${item.title}${role}`
	const sets = foldSets(item.sets).map(fold => {
		const { set } = fold
		const discs = discsOf(set, reader)
		const load = loadOf(set, item, reader)
		const parts = [
			setsAndWork(fold, reader) + (set.eachSide ? ' each side' : ''),
			load === null ? null : item.hands > 1 ? `${load} each hand` : load,
			discs === null ? null : `(${discs} a side)`,
			load === null ? percentOf(set, reader) : null,
			effortOf(set, reader),
			set.tempo === null ? null : `tempo ${set.tempo}`,
			set.restSeconds === null ? null : `rest ${reader.duration(set.restSeconds)}`,
		]
		return parts.filter(part => part !== null).join(' ')
	})
	const swapped = item.insteadOf === null ? [] : [`in place of ${item.insteadOf}`]
	const reasons = new Set(item.sets.flatMap(set => set.reason ?? []))
	const remarks = [...swapped, ...reasons, ...item.milestones, ...item.notes].map(remark => `  ${remark}`)
	return [`${name}: ${sets.length === 0 ? 'as needed' : sets.join('; ')}`, ...remarks]
}
