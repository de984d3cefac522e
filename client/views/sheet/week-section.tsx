import type { ComponentChildren } from 'preact'
import { useContext } from 'preact/hooks'
import { ReaderContext } from '../reader/context.ts'
import { isLongOnPaper } from './long-on-paper.ts'
import { SessionRows, type SessionRowsProps } from './session-rows.tsx'

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
					Week {reader.number(week)} {deload && <span class="tag">lighter week</span>}
					{stale && <span class="tag">as it was</span>}
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
