import type { BlockSheet } from '../../../language/reports/block-sheet.ts'
import type { WrittenSets } from '../../../language/reports/preview.ts'
import { DayOfBlock } from '../sheet/day.tsx'
import { WeekSection } from '../sheet/week-section.tsx'

export interface BlockSheetViewProps {
	readonly sheet: BlockSheet
	readonly stale: boolean
	readonly written: WrittenSets | null
	readonly heading: string
}

/** A block week by week, in percents. */
export function BlockSheetView({ sheet, stale, written, heading }: BlockSheetViewProps) {
	// Where each week's sessions begin in the list of all.
	const starts = sheet.weeks.map((_, week) => sheet.weeks.slice(0, week).reduce((sum, { sessions }) => sum + sessions.length, 0))
	return (
		<div class="sheet percents">
			{sheet.weeks.map(({ week, deload, sessions }, place) => (
				<WeekSection
					key={week}
					week={week}
					deload={deload}
					dates={null}
					blocks={null}
					sessions={sessions.map((session, index) => ({
						key: `${index} ${session.session}`,
						session,
						day: <DayOfBlock session={session} />,
						gym: null,
						places: written?.ofSets[starts[place]! + index] ?? null,
					}))}
					stale={stale}
					heading={heading}
				/>
			))}
		</div>
	)
}
