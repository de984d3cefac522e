import type { ComponentChildren } from 'preact'
import { useContext } from 'preact/hooks'
import { ReaderContext } from '../reader/context.ts'
import { isLongOnPaper } from './long-on-paper.ts'
import { SessionRows, type SessionRowsProps } from './session-rows.tsx'
import { sheetWords as words } from './words.ts'

export interface WeekSectionProps {
	readonly week: number
	readonly deload: boolean
	readonly sessions: readonly (SessionRowsProps & { readonly key: string })[]
	/** From when to when; `null` for a block, which has no dates. */
	readonly dates: string | null
	/** Which weeks of which blocks it is. */
	readonly blocks: ComponentChildren
	/** Shown as it was before the text broke. */
	readonly stale: boolean
	/** Whose sheet it is, for a page that lies by itself. */
	readonly heading: string
}

/** One calendar week: on paper a page of its own. */
export function WeekSection({ week, deload, sessions, dates, blocks, stale, heading }: WeekSectionProps) {
	const reader = useContext(ReaderContext)
	return (
		<section class={`week${stale ? ' stale' : ''}${isLongOnPaper(sessions) ? ' long' : ''}`} id={weekAnchor(week)}>
			<header>
				<h2>
					{words.week(reader.number(week))} {deload && <span class="tag">{words.lighter}</span>}
					{stale && <span class="tag">{words.stale}</span>}
				</h2>
				{dates !== null && <p class="dates">{dates}</p>}
				<p class="blocks">{blocks}</p>
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
}

export function weekAnchor(week: number): string {
	return `week-${week}`
}
