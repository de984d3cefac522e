import type { BlockSheet } from '../../../language/reports/block-sheet.ts'
import type { WrittenSets } from '../../../language/reports/preview.ts'
import { type ShownWeek, WeekSection } from '../sheet/week-section.tsx'
import { useUnchanged } from '../unchanged.ts'

export interface BlockSheetViewProps {
	readonly sheet: BlockSheet
	readonly stale: boolean
	readonly written: WrittenSets | null
	readonly heading: string
}

/** A block week by week, in percents. */
export function BlockSheetView({ heading, ...props }: BlockSheetViewProps) {
	// A week is drawn again when something of it changes, not with each key.
	const weeks = useUnchanged(shownWeeks(props))
	return (
		<div class="sheet percents">
			{weeks.map(shown => (
				<WeekSection key={shown.week} shown={shown} heading={heading} />
			))}
		</div>
	)
}

function shownWeeks({ sheet, stale, written }: Omit<BlockSheetViewProps, 'heading'>): ShownWeek[] {
	// Where each week's sessions begin in the list of all.
	const starts = sheet.weeks.map((_, week) => sheet.weeks.slice(0, week).reduce((sum, { sessions }) => sum + sessions.length, 0))
	return sheet.weeks.map(({ week, deload, sessions }, place) => ({
		week,
		deload,
		dates: null,
		blocks: [],
		sessions: sessions.map((session, index) => ({
			key: `${index} ${session.session}`,
			session,
			gym: null,
			places: written?.ofSets[starts[place]! + index] ?? null,
			ways: null,
		})),
		stale,
	}))
}
