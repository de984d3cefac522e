import { useContext } from 'preact/hooks'
import type { BlockSheetSession } from '../../../language/reports/block-sheet.ts'
import type { SheetItem, SheetSession } from '../../../language/reports/load-sheet.ts'
import { ReaderContext } from '../reader/context.ts'
import { spokenName } from '../reader/words.ts'
import { Sentence } from '../sentence.tsx'
import { unlessChanged } from '../unchanged.ts'
import type { WaysOfItems } from '../ways.ts'
import { DayOf } from './day.tsx'
import { foldSets } from './fold.ts'
import { SetsRow } from './sets-row.tsx'
import { sheetWords as words } from './words.ts'

/** Places of a session's sets, by item and set. */
export type SessionPlaces = readonly (readonly (number | null)[])[]

const columns = 8

export interface SessionRowsProps {
	/** Of a plan, or of a block. */
	readonly session: SheetSession | BlockSheetSession
	/** Title of where it is; `null` where that goes without saying. */
	readonly gym: string | null
	readonly places: SessionPlaces | null
	readonly ways: WaysOfItems | null
}

/** One session of a week's table: its day in the margin, its movements beside it. */
export const SessionRows = unlessChanged(function SessionRows({ session, gym, places, ways }: SessionRowsProps) {
	const reader = useContext(ReaderContext)
	const day = <DayOf session={session} />
	const items = session.items.map(item => ({ item, folds: foldSets(item.sets) }))
	const lines = items.reduce((sum, { folds }) => sum + Math.max(1, folds.length), 0)
	return (
		<tbody class="session">
			<tr class="session-head">
				<th class="day" scope="rowgroup" rowSpan={lines + 2}>
					{day}
				</th>
				<td colSpan={columns - 1}>
					{/* Where there is no margin for it, the day stands here instead. */}
					<span class="day-inline">{day}</span>
					<h3>
						<bdi>{session.title ?? spokenName(session.session)}</bdi>
					</h3>
					<span class="aside">
						{reader.duration(session.minutes * 60)}
						{gym !== null && (
							<>
								{' · '}
								<bdi>{gym}</bdi>
							</>
						)}
					</span>
					<Remarks texts={session.notes} />
				</td>
			</tr>
			{items.map(({ item, folds }, index) =>
				folds.length === 0 ? (
					<tr class={`sets ${item.role}`} key={index}>
						<Movement item={item} lines={1} />
						<td colSpan={columns - 2} />
					</tr>
				) : (
					folds.map((fold, line) => (
						<SetsRow
							key={`${index} ${line}`}
							fold={fold}
							item={item}
							place={places?.[index]?.[fold.first] ?? null}
							way={ways?.[index]?.[fold.first] ?? []}
						>
							{line === 0 && <Movement item={item} lines={folds.length} />}
						</SetsRow>
					))
				),
			)}
			<tr class="to-write">
				<td colSpan={columns - 1}>
					<span class="blank felt">{words.felt}</span>
					<span class="blank took">{words.minutes}</span>
					<span class="blank remarks">{words.remarks}</span>
				</td>
			</tr>
		</tbody>
	)
})

function Movement({ item, lines }: { item: SheetItem; lines: number }) {
	return (
		<th class={`movement ${item.role}`} scope="row" rowSpan={lines}>
			<span class="name" dir="auto">
				{item.title}
			</span>
			<span class="role"> {item.role}</span>
			{item.withItemAbove && <span class="remark">{words.withItemAbove}</span>}
			{item.insteadOf !== null && (
				<span class="remark">
					{words.insteadOf} <bdi>{item.insteadOf}</bdi>
				</span>
			)}
			{item.milestones.map((text, index) => (
				<span class="remark" key={index}>
					<Sentence text={text} />
				</span>
			))}
			<Remarks texts={item.notes} />
		</th>
	)
}

function Remarks({ texts }: { texts: readonly string[] }) {
	return (
		<>
			{texts.map((text, index) => (
				<span class="remark" dir="auto" key={index}>
					{text}
				</span>
			))}
		</>
	)
}
