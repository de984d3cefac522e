import { useContext } from 'preact/hooks'
import type { CalendarDate } from '../../../language/model/quantities.ts'
import { ReaderContext } from '../reader/context.ts'
import { unlessChanged } from '../unchanged.ts'
import { isLongOnPaper } from './long-on-paper.ts'
import { SessionRows, type SessionRowsProps } from './session-rows.tsx'
import { sheetWords as words } from './words.ts'

/** What is shown of a week: data alone, so that a week that says the same as before is known as the same. */
export interface ShownWeek {
	readonly week: number
	readonly deload: boolean
	readonly sessions: readonly (SessionRowsProps & { readonly key: string })[]
	/** From when to when; `null` for a block, which has no dates. */
	readonly dates: { readonly from: CalendarDate; readonly to: CalendarDate } | null
	/** Which weeks of which blocks it is. */
	readonly blocks: readonly { readonly week: number; readonly title: string }[]
	/** Shown as it was before the text broke. */
	readonly stale: boolean
}

export interface WeekSectionProps {
	readonly shown: ShownWeek
	/** Whose sheet it is, for a page that lies by itself. */
	readonly heading: string
}

/** One calendar week: on paper a page of its own. */
export const WeekSection = unlessChanged(function WeekSection({ shown, heading }: WeekSectionProps) {
	const { week, deload, sessions, dates, blocks, stale } = shown
	const reader = useContext(ReaderContext)
	return (
		<section class={`week${stale ? ' stale' : ''}${isLongOnPaper(sessions) ? ' long' : ''}`} id={weekAnchor(week)}>
			<header>
				<h2>
					{words.week(reader.number(week))} {deload && <span class="tag">{words.lighter}</span>}
					{stale && <span class="tag">{words.stale}</span>}
				</h2>
				{dates !== null && <p class="dates">{reader.days(dates.from, dates.to)}</p>}
				<p class="blocks">
					{blocks.map((block, index) => (
						<span key={index}>
							{words.weekOf(reader.number(block.week))} <bdi>{block.title}</bdi>
						</span>
					))}
				</p>
				<p class="whose">
					<bdi>{heading}</bdi>
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
							{words.day}
						</th>
						<th scope="col">{words.movement}</th>
						<th scope="col">{words.sets}</th>
						<th scope="col">{words.load}</th>
						<th scope="col">{words.discs}</th>
						<th scope="col">{words.tempo}</th>
						<th scope="col">{words.rest}</th>
						<th scope="col" class="done">
							{words.done}
						</th>
					</tr>
				</thead>
				{sessions.map(({ key, ...session }) => (
					<SessionRows key={key} {...session} />
				))}
			</table>
		</section>
	)
})

export function weekAnchor(week: number): string {
	return `week-${week}`
}
