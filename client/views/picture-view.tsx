import { useContext } from 'preact/hooks'
import type { Picture, Place } from '../../language/reports/preview.ts'
import { Cautions } from './cautions.tsx'
import { Overview } from './overview.tsx'
import { ProblemsList, problemsAnchor, problemsInShort } from './problems-list.tsx'
import { ReaderContext } from './reader/context.ts'
import { counted } from './reader/words.ts'
import { LoadSheetView } from './sheet/load-sheet-view.tsx'
import { weeksOf } from './sheet/weeks.ts'
import { WeeklyVolumeView } from './volume/weekly-volume-view.tsx'
import { WaysContext, waysOfSets } from './ways.ts'

export interface PictureViewProps {
	readonly picture: Picture
	/** Names of the blocks that are shown as they were before their text broke; `null`: every one. */
	readonly staleBlocks: readonly string[] | null
	/** Goes to a place in the text; `null` where there is no editor. */
	readonly go: ((place: Place) => void) | null
}

/** A whole plan (or block) on one page: what it is, its weeks, what they add up to, what is open. */
export function PictureView({ picture, staleBlocks, go }: PictureViewProps) {
	const { sheet, volume, titles, lifterTitle } = picture
	const heading = lifterTitle === null ? picture.title : `${lifterTitle} · ${picture.title}`
	return (
		<main>
			<header class="masthead">
				{lifterTitle !== null && (
					<p class="lifter" dir="auto">
						{lifterTitle}
					</p>
				)}
				<h1 dir="auto">{picture.title}</h1>
				<Facts picture={picture} />
			</header>
			{sheet !== null && (
				<>
					<Overview sheet={sheet} titles={titles} meets={picture.meets} />
					<WaysContext.Provider value={waysOfSets(sheet, picture.ways)}>
						<LoadSheetView sheet={sheet} titles={titles} staleBlocks={staleBlocks} written={picture.written} heading={heading} />
					</WaysContext.Provider>
				</>
			)}
			{volume !== null && (
				<section class="totals" id="volume">
					<h2>Weekly volume</h2>
					<WeeklyVolumeView volume={volume} needs={picture.needs} sheet={sheet} />
				</section>
			)}
			<ProblemsList problems={picture.problems} go={go} />
			<Cautions cautions={picture.cautions} />
		</main>
	)
}

function Facts({ picture: { sheet, meets, problems } }: { picture: Picture }) {
	const reader = useContext(ReaderContext)
	const weeks = sheet ? weeksOf(sheet) : []
	const open = problemsInShort(problems)
	return (
		<ul class="facts">
			{sheet !== null && weeks.length > 0 && (
				<>
					<li>{reader.days(sheet.sessions[0]!.date, sheet.sessions.at(-1)!.date)}</li>
					<li>
						{counted(weeks.length, 'week')}, {counted(sheet.sessions.length, 'session')}
					</li>
					<li>loads in {sheet.unit}</li>
				</>
			)}
			{meets.map(meet => (
				<li key={meet.date}>
					<span aria-hidden="true">◆ </span>
					<bdi>{meet.title || 'Meet'}</bdi>, <bdi>{reader.days(meet.date, meet.date)}</bdi>
				</li>
			))}
			<li>
				<a href={`#${problemsAnchor}`}>{open || 'no open problems'}</a>
			</li>
		</ul>
	)
}
