import type { LoadSheet } from '../../../language/reports/load-sheet.ts'
import type { Titles, Ways, WrittenSets } from '../../../language/reports/preview.ts'
import { blockTitle, gymTitle } from '../reader/words.ts'
import { useUnchanged } from '../unchanged.ts'
import { waysOfSessions } from '../ways.ts'
import { type ShownWeek, WeekSection } from './week-section.tsx'
import { weeksOf } from './weeks.ts'
import { sheetWords as words } from './words.ts'

export interface LoadSheetViewProps {
	readonly sheet: LoadSheet
	readonly titles: Titles
	/** Names of the blocks whose text is broken; `null`: every one. */
	readonly staleBlocks: readonly string[] | null
	/** `null` on a page that leads to no text. */
	readonly written: WrittenSets | null
	/** `null` on a page that does not say how loads came about. */
	readonly ways: Ways | null
	readonly heading: string
}

/** The plan as a lifter needs it, week by week. */
export function LoadSheetView({ heading, ...props }: LoadSheetViewProps) {
	// A week is drawn again when something of it changes, not with each key.
	const weeks = useUnchanged(shownWeeks(props))
	if (weeks.length === 0) return <p class="empty">{words.empty}</p>
	return (
		<div class="sheet">
			{weeks.map(shown => (
				<WeekSection key={shown.dates?.from} shown={shown} heading={heading} />
			))}
		</div>
	)
}

function shownWeeks({ sheet, titles, staleBlocks, written, ways }: Omit<LoadSheetViewProps, 'heading'>): ShownWeek[] {
	const ofSessions = waysOfSessions(sheet, ways)
	const gyms = new Set(sheet.sessions.map(session => session.gym))
	return weeksOf(sheet).map(({ week, monday, sunday, deload, sessions }) => {
		const blocks = new Map(sessions.map(({ session }) => [`${session.block} ${session.week}`, session]))
		return {
			week,
			deload,
			dates: { from: monday, to: sunday },
			blocks: [...blocks.values()].map(session => ({ week: session.week, title: blockTitle(titles, session.block) })),
			sessions: sessions.map(({ index, session }) => ({
				key: session.id,
				session,
				gym: gyms.size > 1 && session.gym !== null ? gymTitle(titles, session.gym) : null,
				places: written?.ofSets[index] ?? null,
				ways: ofSessions[index] ?? null,
			})),
			stale: sessions.some(({ session }) => staleBlocks === null || staleBlocks.includes(session.block)),
		}
	})
}
