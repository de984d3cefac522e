import type { LoadSheet } from '../../../language/reports/load-sheet.ts'
import type { Titles, WrittenSets } from '../../../language/reports/preview.ts'
import { WeekSection } from './week-section.tsx'
import { weeksOf } from './weeks.ts'

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
	const weeks = weeksOf(sheet)
	const gyms = new Set(sheet.sessions.map(session => session.gym))
	if (weeks.length === 0) return <p class="empty">No session of this plan has a date yet.</p>
	return (
		<div class="sheet">
			{weeks.map(week => (
				<WeekSection
					key={week.monday}
					week={week}
					titles={titles}
					gymsVary={gyms.size > 1}
					stale={week.sessions.some(({ session }) => staleBlocks === null || staleBlocks.includes(session.block))}
					places={written?.ofSets ?? null}
					heading={heading}
				/>
			))}
		</div>
	)
}
