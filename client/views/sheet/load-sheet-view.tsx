import { useContext } from 'preact/hooks'
import type { LoadSheet } from '../../../language/reports/load-sheet.ts'
import type { Titles, WrittenSets } from '../../../language/reports/preview.ts'
import { ReaderContext } from '../reader/context.ts'
import { blockTitle, gymTitle } from '../reader/words.ts'
import { Day } from './day.tsx'
import { WeekSection } from './week-section.tsx'
import { weeksOf } from './weeks.ts'
import { sheetWords as words } from './words.ts'

export interface LoadSheetViewProps {
	readonly sheet: LoadSheet
	readonly titles: Titles
	/** Names of the blocks whose text is broken; `null`: every one. */
	readonly staleBlocks: readonly string[] | null
	readonly written: WrittenSets | null
	readonly heading: string
}

/** The plan as a lifter needs it, week by week. */
export function LoadSheetView({ sheet, titles, staleBlocks, written, heading }: LoadSheetViewProps) {
	const reader = useContext(ReaderContext)
	const weeks = weeksOf(sheet)
	const gyms = new Set(sheet.sessions.map(session => session.gym))
	if (weeks.length === 0) return <p class="empty">{words.empty}</p>
	return (
		<div class="sheet">
			{weeks.map(({ week, monday, sunday, deload, sessions }) => {
				const blocks = new Map(sessions.map(({ session }) => [`${session.block} ${session.week}`, session]))
				return (
					<WeekSection
						key={monday}
						week={week}
						deload={deload}
						dates={reader.days(monday, sunday)}
						blocks={[...blocks.values()].map(session => (
							<span key={session.block}>
								{words.weekOf(reader.number(session.week))} <bdi>{blockTitle(titles, session.block)}</bdi>
							</span>
						))}
						// Names of sessions and blocks have no spaces, so that this tells them apart.
						sessions={sessions.map(({ index, session }) => ({
							key: `${session.date} ${session.block} ${session.session}`,
							session,
							day: <Day date={session.date} part={session.part} />,
							gym: gyms.size > 1 && session.gym !== null ? gymTitle(titles, session.gym) : null,
							places: written?.ofSets[index] ?? null,
						}))}
						stale={sessions.some(({ session }) => staleBlocks === null || staleBlocks.includes(session.block))}
						heading={heading}
					/>
				)
			})}
		</div>
	)
}
