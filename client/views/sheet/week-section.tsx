import { useContext } from 'preact/hooks'
import type { Titles } from '../../../language/reports/preview.ts'
import { ReaderContext } from '../reader/context.ts'
import { blockTitle, gymTitle } from '../reader/words.ts'
import { type SessionPlaces, SessionRows } from './session-rows.tsx'
import type { SheetWeek } from './weeks.ts'

export interface WeekSectionProps {
	readonly week: SheetWeek
	readonly titles: Titles
	/** Not all sessions are in one place, so each says where it is. */
	readonly gymsVary: boolean
	/** Shown as it was before the text broke. */
	readonly stale: boolean
	/** By session of the sheet. */
	readonly places: readonly SessionPlaces[] | null
	/** Whose sheet it is, for a page that lies by itself. */
	readonly heading: string
}

/** One calendar week: on paper a page of its own. */
export function WeekSection({ week, titles, gymsVary, stale, places, heading }: WeekSectionProps) {
	const reader = useContext(ReaderContext)
	const blocks = new Map(week.sessions.map(({ session }) => [`${session.block} ${session.week}`, session]))
	return (
		<section class={stale ? 'week stale' : 'week'} id={weekAnchor(week.week)}>
			<header>
				<h2>
					Week {reader.number(week.week)} {week.deload && <span class="tag">lighter week</span>}
					{stale && <span class="tag">as it was</span>}
				</h2>
				<p class="dates">{reader.days(week.monday, week.sunday)}</p>
				<p class="blocks">
					{[...blocks.values()].map(session => (
						<span key={session.block}>
							week {reader.number(session.week)} of <bdi>{blockTitle(titles, session.block)}</bdi>
						</span>
					))}
				</p>
				<p class="whose" dir="auto">
					{heading}
				</p>
			</header>
			<table>
				<colgroup>
					{(['day', 'movement', 'work', 'load', 'discs', 'tempo', 'rest', 'done'] as const).map(column => (
						<col key={column} class={`for-${column}`} />
					))}
				</colgroup>
				<thead>
					<tr>
						<th scope="col" class="for-day">
							Day
						</th>
						<th scope="col">Movement</th>
						<th scope="col">Sets × reps</th>
						<th scope="col">Load</th>
						<th scope="col">Discs a side</th>
						<th scope="col">Tempo</th>
						<th scope="col">Rest</th>
						<th scope="col" class="done">
							Done
						</th>
					</tr>
				</thead>
				{week.sessions.map(({ index, session }) => (
					<SessionRows
						key={`${session.date} ${session.block} ${session.session}`}
						session={session}
						gym={gymsVary && session.gym !== null ? gymTitle(titles, session.gym) : null}
						places={places?.[index] ?? null}
					/>
				))}
			</table>
		</section>
	)
}

export function weekAnchor(week: number): string {
	return `week-${week}`
}
