import { addDays, mondayOf } from '../compute/calendar.ts'
import type * as tree from '../grammar/generated/ast.ts'
import type { DayMove, Meet, Pause, PlanDays } from '../model/definitions.ts'
import type { CalendarDate } from '../model/quantities.ts'
import { fact, type Reader } from './reader.ts'
import { readRunChange } from './run-change.ts'

/** Reads what a plan says about days, line by line: for all, or for one member of a team. */
export class PlanDaysReader {
	private start: PlanDays['start']
	private days: PlanDays['days']
	private readonly pauses: Pause[] = []
	private readonly meets: Meet[] = []
	private readonly moves: DayMove[] = []

	/** `member` keeps the facts of one member apart from those that hold for all. */
	constructor(
		private readonly reader: Reader,
		private readonly member?: string,
	) {}

	/** True where the line was one of them. */
	read(line: tree.PlanLine | tree.RunLine | tree.MemberLine): boolean {
		const { reader } = this
		const span = reader.span(line)
		const whose = this.member === undefined ? '' : ` for ${this.member}`
		switch (line.$type) {
			case 'StartLine':
				if (reader.first(`start${whose}`, line)) this.start = fact(readStart(reader, line), span)
				return true
			case 'DaysLine':
				if (reader.first(`days${whose}`, line)) this.days = fact(reader.weekdays(line, 'days'), span)
				return true
			case 'MeetLine': {
				const on = reader.date(line, 'date')
				if (on) this.meets.push({ on, title: reader.text(line, 'title'), span })
				return true
			}
			case 'PauseLine': {
				const pause = readPause(reader, line)
				if (pause) this.pauses.push(pause)
				return true
			}
			case 'MoveLine': {
				if (line.date === undefined) return false
				const move = readRunChange(reader, line)
				if (move?.kind === 'move-day') this.moves.push(move)
				return true
			}
			default:
				return false
		}
	}

	found(): PlanDays {
		const { start, days, pauses, meets, moves } = this
		return { start, days, pauses, meets, moves }
	}
}

/** `start 12 weeks before 2026-12-19`: the monday of the calendar week that is so many weeks before the week of that day. */
function readStart(reader: Reader, line: tree.StartLine): CalendarDate | undefined {
	if (line.before === undefined) return reader.date(line, 'date')
	const day = reader.date(line, 'before')
	const weeks = reader.count(line, 'weeks', 'Weeks')
	return day !== undefined && weeks !== undefined ? addDays(mondayOf(day), -7 * Math.min(weeks, mostWeeksBefore)) : undefined
}

/** Further back than ten years nobody counts from a meet. */
const mostWeeksBefore = 520

function readPause(reader: Reader, line: tree.PauseLine): Pause | undefined {
	const span = reader.span(line)
	const from = reader.date(line, 'date')
	const to = reader.date(line, 'to')
	if (from === undefined || to === undefined) {
		if (line.to === undefined && from !== undefined) {
			const message = `A pause says until when it lasts: pause ${from} to ${addDays(from, 13)}. Change the end when more is known.`
			reader.fault('syntax', span, message)
		}
		return undefined
	}
	if (to < from) {
		reader.endBeforeStart(reader.spanOf(line, 'to'), from, to)
		return undefined
	}
	return { from, to, because: reader.text(line, 'reason'), span }
}
