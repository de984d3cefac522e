import type { ComponentChildren } from 'preact'
import { useContext } from 'preact/hooks'
import type { SheetItem } from '../../../language/reports/load-sheet.ts'
import { ReaderContext } from '../reader/context.ts'
import { Sentence } from '../sentence.tsx'
import { TextLinksContext } from '../text-links.ts'
import { Discs } from './discs.tsx'
import type { FoldedSets } from './fold.ts'
import { discsOf, effortOf, exactOf, loadOf, percentOf, setsAndWork } from './wording.ts'
import { sheetWords as words } from './words.ts'

export interface SetsRowProps {
	readonly fold: FoldedSets
	readonly item: SheetItem
	/** Index into the picture's `written.places`. */
	readonly place: number | null
	/** How the load came about, line by line. */
	readonly way: readonly string[]
	/** The movement's cell, before the first of its lines. */
	readonly children?: ComponentChildren
}

/** One line of the sheet: sets that are done alike. */
export function SetsRow({ fold, item, place, way, children }: SetsRowProps) {
	const reader = useContext(ReaderContext)
	const links = useContext(TextLinksContext)
	const { set } = fold
	const asked = setsAndWork(fold, reader)
	const load = loadOf(set, item, reader) ?? set.asked ?? null
	const effort = effortOf(set, reader)
	const written = set.asked == null ? percentOf(set, reader) : null
	// Where there is nobody to load for, the percent is what there is.
	const isBare = load === null && set.reason === null && written !== null
	const percent = isBare ? null : written
	const exact = exactOf(set, reader)
	const discs = discsOf(set, reader)
	const lit = place !== null && links?.lit.includes(place)
	return (
		<tr class={`sets ${item.role}${lit ? ' lit' : ''}`} data-place={place ?? undefined}>
			{children}
			<td class="work">
				{links !== null && place !== null ? (
					<button type="button" class="to-text" title={words.toText} onClick={() => links.go(place)}>
						{asked}
					</button>
				) : (
					asked
				)}
				{set.eachSide && (
					<>
						{' '}
						<span class="aside">{words.eachSide}</span>
					</>
				)}
			</td>
			<td class="load">
				{isBare && <strong>{written}</strong>}
				{load !== null && (
					<>
						<strong>{load}</strong>
						{item.hands > 1 && <span class="each"> {words.eachHand}</span>}
					</>
				)}
				{load === null && set.reason === null && item.role === 'test' && <span>{words.open}</span>}
				{effort !== null && <span class="effort"> {effort}</span>}
				{(percent ?? exact) !== null && (
					<span class="aside grounds">
						{' '}
						{percent}
						{exact !== null && (
							<span class="exact">
								{percent !== null && ', '}
								{exact}
							</span>
						)}
					</span>
				)}
				{way.length > 0 && load !== null && <WayOfLoad lines={way} of={item.title} />}
				{set.reason !== null && (
					<span class="reason">
						{load === null && <strong>?</strong>} <Sentence text={set.reason} />
					</span>
				)}
			</td>
			<td class="a-side">
				{discs !== null && (
					<>
						{set.perSide !== null && set.perSide.length > 0 && <Discs perSide={set.perSide} unit={set.unit} />}
						<span>
							{discs}
							<span class="in-words"> {words.aSide}</span>
						</span>
					</>
				)}
			</td>
			<td class="tempo">
				{set.tempo !== null && (
					<>
						<span class="in-words">{words.tempoOf} </span>
						<bdi dir="ltr">{set.tempo}</bdi>
					</>
				)}
			</td>
			<td class="rest">
				{set.restSeconds !== null && (
					<>
						<span class="in-words">{words.restOf} </span>
						{reader.duration(set.restSeconds)}
					</>
				)}
			</td>
			<td class="done">
				<Boxes count={fold.firm + fold.optional} />
			</td>
		</tr>
	)
}

/** How the load came about, for whoever asks. */
function WayOfLoad({ lines, of }: { lines: readonly string[]; of: string }) {
	return (
		<details class="way">
			<summary>
				{words.how}
				<span class="unseen" dir="auto">
					{' '}
					{words.howOf(of)}
				</span>
			</summary>
			<ul>
				{lines.map((line, index) => (
					<li key={index}>
						<Sentence text={line} />
					</li>
				))}
			</ul>
		</details>
	)
}

/** Room to write one result a set; on paper only. */
function Boxes({ count }: { count: number }) {
	return (
		<span class="boxes">
			{Array.from({ length: count }, (_, index) => (
				<i key={index} />
			))}
		</span>
	)
}
