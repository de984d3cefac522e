import { Fragment } from 'preact'
import { useContext } from 'preact/hooks'
import type { CalendarDay, CalendarSession, CalendarWeek, PlanCalendar } from '../../../language/reports/calendar.ts'
import type { Titles } from '../../../language/reports/preview.ts'
import { ReaderContext } from '../reader/context.ts'
import { blockTitle, spokenName } from '../reader/words.ts'
import { weekAnchor } from '../sheet/week-section.tsx'
import { daysFrom, shift } from '../sheet/weeks.ts'
import { unlessChanged } from '../unchanged.ts'
import { calendarWords as words } from './words.ts'

export interface CalendarViewProps {
	readonly calendar: PlanCalendar
	readonly titles: Titles
	/** Numbers of the weeks that a sheet below shows; the others lead nowhere. */
	readonly onSheet: readonly number[]
}

/** The plan's weeks under each other, with the days on which anything is. */
export const CalendarView = unlessChanged(function CalendarView({ calendar: { weeks }, titles, onSheet }: CalendarViewProps) {
	const reader = useContext(ReaderContext)
	const [first] = weeks
	if (first === undefined) return null
	const used = [0, 1, 2, 3, 4, 5, 6].filter(day =>
		weeks.some(week => week.days.some(({ date }) => daysFrom(week.monday, date) === day)),
	)
	return (
		<section class="calendar" id="calendar">
			<h2>{words.heading}</h2>
			<table>
				<thead>
					<tr>
						<th scope="col">{words.week}</th>
						<th scope="col">{words.block}</th>
						{used.map(day => (
							<th scope="col" key={day}>
								<bdi>{reader.weekday(shift(first.monday, day))}</bdi>
							</th>
						))}
					</tr>
				</thead>
				<tbody>
					{weeks.map((week, index) => (
						<Fragment key={week.monday}>
							<Gap before={weeks[index - 1]} week={week} columns={used.length + 2} />
							<WeekRow week={week} days={used} titles={titles} isOnSheet={onSheet.includes(week.week)} />
						</Fragment>
					))}
				</tbody>
			</table>
		</section>
	)
})

/** Weeks that are left out, in one line. */
function Gap({ before, week, columns }: { before: CalendarWeek | undefined; week: CalendarWeek; columns: number }) {
	const between = before === undefined ? 0 : week.week - before.week - 1
	if (between <= 0) return null
	return (
		<tr class="gap">
			<td colSpan={columns}>{words.between(between)}</td>
		</tr>
	)
}

interface WeekRowProps {
	readonly week: CalendarWeek
	readonly days: readonly number[]
	readonly titles: Titles
	readonly isOnSheet: boolean
}

function WeekRow({ week, days, titles, isOnSheet }: WeekRowProps) {
	const reader = useContext(ReaderContext)
	const isLighter = week.blocks.length > 0 && week.blocks.every(({ deload }) => deload)
	const name = reader.number(week.week)
	return (
		<tr class={isLighter ? 'lighter' : undefined}>
			<th scope="row">
				<span class="number">{isOnSheet ? <a href={`#${weekAnchor(week.week)}`}>{name}</a> : name}</span>
				<span class="aside">
					{' '}
					<bdi>{reader.day(week.monday)}</bdi>
				</span>
			</th>
			<td class="block">
				{week.blocks.map(({ block, week: blockWeek }) => (
					<span key={block}>
						<bdi>{blockTitle(titles, block)}</bdi> <span class="aside">{words.blockWeek(reader.number(blockWeek))}</span>
					</span>
				))}
				{isLighter && <span class="tag">{words.lighter}</span>}
				{week.pauses.map(({ because }, index) => (
					<span key={index}>
						<span class="tag">{words.pause}</span> {because !== null && <bdi class="aside">{because}</bdi>}
					</span>
				))}
				{week.days.length === 0 && week.pauses.length === 0 && <span class="aside">{words.empty}</span>}
			</td>
			{days.map(day => {
				const found = week.days.find(({ date }) => daysFrom(week.monday, date) === day)
				return <td key={day}>{found && <Day day={found} />}</td>
			})}
		</tr>
	)
}

function Day({ day: { date, sessions, meets } }: { day: CalendarDay }) {
	const reader = useContext(ReaderContext)
	return (
		<>
			<span class="in-words">
				<bdi>{reader.weekday(date)}</bdi> <bdi>{reader.day(date)}</bdi>{' '}
			</span>
			{sessions.map((session, index) => (
				<SessionOfDay key={`${index} ${session.block} ${session.session}`} session={session} />
			))}
			{meets.map((title, index) => (
				<span class="meet" key={index}>
					<span aria-hidden="true">◆ </span>
					<bdi>{title || words.meet}</bdi>
					{title !== '' && <span class="unseen">, {words.meet}</span>}
				</span>
			))}
		</>
	)
}

function SessionOfDay({ session: { session, title, part, minutes, main } }: { session: CalendarSession }) {
	const reader = useContext(ReaderContext)
	const named = title ?? spokenName(session)
	return (
		<span class="session">
			<span>
				<bdi>{named}</bdi>
			</span>
			<span class="aside">
				{part !== null && <>{words.part[part]} · </>}
				{reader.duration(minutes * 60)}
				{main.length > 0 && (
					<>
						{' · '}
						<bdi>{main.join(', ')}</bdi>
					</>
				)}
			</span>
		</span>
	)
}
