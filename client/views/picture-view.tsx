import { useContext } from 'preact/hooks'
import type { Picture, Place } from '../../language/reports/preview.ts'
import { BlockAsksView } from './block/block-asks-view.tsx'
import { BlockSheetView } from './block/block-sheet-view.tsx'
import { CalendarView } from './calendar/calendar-view.tsx'
import { Cautions } from './cautions.tsx'
import { counted } from './counted.ts'
import { GatesView } from './gates/gates-view.tsx'
import { Overview } from './overview.tsx'
import { ProblemsList, problemsAnchor, problemsInShort } from './problems-list.tsx'
import { ReaderContext } from './reader/context.ts'
import { LoadSheetView } from './sheet/load-sheet-view.tsx'
import { weeksOf } from './sheet/weeks.ts'
import { useUnchanged } from './unchanged.ts'
import { WeeklyVolumeView } from './volume/weekly-volume-view.tsx'
import { pageWords as words } from './words.ts'

export interface PictureViewProps {
	readonly picture: Picture
	/** Names of the blocks that are shown as they were before their text broke; `null`: every one. */
	readonly staleBlocks: readonly string[] | null
	/** Goes to a place in the text; `null` where there is no editor. */
	readonly go: ((place: Place) => void) | null
}

/** A whole plan (or block) on one page: what it is, its weeks, what they add up to, its gates, what is open. */
export function PictureView({ picture, staleBlocks, go }: PictureViewProps) {
	const { sheet, blockSheet, volume, titles, lifterTitle, calendar, gates, asks } = picture
	const heading = lifterTitle === null ? picture.title : `${lifterTitle} · ${picture.title}`
	const onSheet = useUnchanged(sheet === null ? [] : weeksOf(sheet).map(({ week }) => week))
	const hasCalendar = calendar !== null && calendar.weeks.length > 0
	const hasGates = hasCalendar && gates.length > 0
	const hasBlockSheet = blockSheet !== null && blockSheet.weeks.length > 0
	const hasVolume = volume !== null && volume.weeks.length > 0
	return (
		<main>
			<header class="masthead">
				<p class="lifter">
					<bdi>{lifterTitle ?? words.block}</bdi>
				</p>
				<h1>
					<bdi>{picture.title}</bdi>
				</h1>
				<Facts picture={picture} />
				<Parts
					parts={[
						...(asks === null ? [] : [['asks', words.asks] as const]),
						...(hasCalendar ? [['calendar', words.calendar] as const] : []),
						...(sheet === null && !hasBlockSheet ? [] : [['sheet', words.sheet] as const]),
						...(hasVolume ? [['volume', words.volume] as const] : []),
						...(hasGates ? [['gates', words.gates] as const] : []),
						[problemsAnchor, words.problems],
					]}
				/>
			</header>
			{sheet !== null && <Overview sheet={sheet} titles={titles} meets={picture.meets} />}
			{asks !== null && <BlockAsksView asks={asks} />}
			{hasCalendar && <CalendarView calendar={calendar} titles={titles} onSheet={onSheet} />}
			{sheet !== null && (
				<div id="sheet">
					<LoadSheetView
						sheet={sheet}
						titles={titles}
						staleBlocks={staleBlocks}
						written={picture.written}
						ways={picture.ways}
						heading={heading}
					/>
				</div>
			)}
			{hasBlockSheet && (
				<div id="sheet">
					<BlockSheetView sheet={blockSheet} stale={staleBlocks === null} written={picture.written} heading={heading} />
				</div>
			)}
			{hasVolume && (
				<section class="totals" id="volume">
					<h2>{words.volume}</h2>
					<WeeklyVolumeView volume={volume} needs={picture.needs} sheet={sheet} caps={picture.caps} />
				</section>
			)}
			{hasGates && <GatesView gates={gates} calendar={calendar} titles={titles} go={go} />}
			<ProblemsList problems={picture.problems} go={go} />
			<Cautions cautions={picture.cautions} />
		</main>
	)
}

/** Ways to the parts of a long page. */
function Parts({ parts }: { parts: readonly (readonly [anchor: string, name: string])[] }) {
	return (
		<nav class="parts" aria-label={words.parts}>
			<ul>
				{parts.map(([anchor, name]) => (
					<li key={anchor}>
						<a href={`#${anchor}`}>{name}</a>
					</li>
				))}
			</ul>
		</nav>
	)
}

function Facts({ picture: { sheet, blockSheet, meets, problems } }: { picture: Picture }) {
	const reader = useContext(ReaderContext)
	const weeks = sheet ? weeksOf(sheet) : []
	const open = problemsInShort(problems)
	return (
		<ul class="facts">
			{sheet !== null && weeks.length > 0 && (
				<>
					<li>{reader.days(sheet.sessions[0]!.date, sheet.sessions.at(-1)!.date)}</li>
					<li>
						{counted.week(weeks.length)}, {counted.session(sheet.sessions.length)}
					</li>
					<li>{words.loadsIn(sheet.unit)}</li>
				</>
			)}
			{blockSheet !== null && (
				<>
					<li>{counted.week(blockSheet.weeks.length)}</li>
					<li>{words.inPercents}</li>
				</>
			)}
			{meets.map(meet => (
				<li key={meet.date}>
					<span aria-hidden="true">◆ </span>
					<bdi>{meet.title || words.meet}</bdi>, <bdi>{reader.days(meet.date, meet.date)}</bdi>
				</li>
			))}
			<li>
				<a href={`#${problemsAnchor}`}>{open || words.noProblems}</a>
			</li>
		</ul>
	)
}
