import { useContext, useMemo } from 'preact/hooks'
import type { LoadSheet } from '../../../language/reports/load-sheet.ts'
import type { WeekNeeds } from '../../../language/reports/preview.ts'
import type { WeeklyVolume } from '../../../language/reports/weekly-volume.ts'
import { linkSecondsDrawing, linksDrawing } from '../charts/links.ts'
import { mainLiftDrawing } from '../charts/main-lift.ts'
import { muscleSetsDrawing } from '../charts/muscle-sets.ts'
import { ReaderContext } from '../reader/context.ts'
import { counted } from '../reader/words.ts'
import { ChartFigure } from './chart-figure.tsx'
import { Key, KeyEntry } from './key.tsx'
import {
	linkSeconds,
	linkSets,
	type Measure,
	mainLifts,
	muscleSets,
	type NeedMeasure,
	neededSessions,
	needRows,
	weekColumns,
} from './measures.ts'

export interface WeeklyVolumeViewProps {
	readonly volume: WeeklyVolume
	/** One entry for each of the weeks. */
	readonly needs: readonly (WeekNeeds | null)[]
	/** Says which lifts are main work; `null` for a block. */
	readonly sheet: LoadSheet | null
}

/** What the weeks add up to. */
export function WeeklyVolumeView({ volume, needs, sheet }: WeeklyVolumeViewProps) {
	const reader = useContext(ReaderContext)
	const weeks = useMemo(() => weekColumns(volume), [volume])
	const muscles = useMemo(() => muscleSets(volume, needs), [volume, needs])
	const links = useMemo(() => linkSets(volume, needs), [volume, needs])
	const seconds = useMemo(() => linkSeconds(volume), [volume])
	const lifts = useMemo(() => mainLifts(volume, sheet), [volume, sheet])
	const someLighter = weeks.some(week => week.deload)
	const lighter = someLighter && <KeyEntry swatch="lighter">lighter week</KeyEntry>

	if (weeks.length === 0) return <p class="empty">No week with work to count yet.</p>
	return (
		<div class="charts">
			<ChartFigure
				name="links"
				title="Stability and drive"
				about="Hard sets a week, by the link of the chain that a movement trains first."
				drawing={linksDrawing(links, weeks, reader)}
				span="half"
				weeks={weeks}
				rows={[...needRows(links.stability), ...needRows(links.drive), ...neededSessions(needs)]}
			>
				<Key>
					<KeyEntry swatch="stability">stability</KeyEntry>
					<KeyEntry swatch="drive">drive</KeyEntry>
					<NeedKey measures={[links.stability, links.drive]} />
					{lighter}
				</Key>
			</ChartFigure>
			<ChartFigure
				name="seconds"
				title="Time under tension"
				about="Minutes and seconds a week: reps by their tempo, or holds."
				drawing={linkSecondsDrawing(seconds, weeks, reader)}
				span="half"
				weeks={weeks}
				rows={[seconds.stability, seconds.drive]}
			>
				<Key>
					<KeyEntry swatch="stability">stability</KeyEntry>
					<KeyEntry swatch="drive">drive</KeyEntry>
					<RangeKey measures={[seconds.stability, seconds.drive]} />
					{lighter}
				</Key>
			</ChartFigure>
			{muscles.length > 0 && (
				<ChartFigure
					name="muscles"
					title="Hard sets a muscle"
					about="Sets a week, each by its share: 1 where a muscle does the work, a half where it assists."
					drawing={muscleSetsDrawing(muscles, weeks, reader)}
					span="page"
					weeks={weeks}
					rows={muscles.flatMap(needRows)}
				>
					<Key>
						<KeyEntry swatch="volume">sets</KeyEntry>
						<NeedKey measures={muscles} />
						{lighter}
					</Key>
				</ChartFigure>
			)}
			{lifts.map(lift => (
				<ChartFigure
					key={lift.lift}
					name={`lift-${lift.lift}`}
					title={lift.title}
					about={`${lift.work.name}${lift.work.unit === null ? '' : ` in ${lift.work.unit}`} below, percent of the reference above.`}
					drawing={mainLiftDrawing(lift, weeks, reader)}
					span="half"
					weeks={weeks}
					rows={[lift.sets, lift.reps, lift.work, lift.average, lift.top]}
				>
					<Key>
						<KeyEntry swatch="top">heaviest set</KeyEntry>
						<KeyEntry swatch="intensity">average intensity</KeyEntry>
						<KeyEntry swatch="volume">{lift.work.name.toLowerCase()}</KeyEntry>
						<RangeKey measures={[lift.work]} />
						{lighter}
					</Key>
				</ChartFigure>
			))}
			<LeftOut volume={volume} />
		</div>
	)
}

function NeedKey({ measures }: { measures: readonly NeedMeasure[] }) {
	const because = new Set(measures.flatMap(({ need }) => need?.because ?? []))
	if (because.size === 0) return null
	const others = measures.some(({ all, need }) =>
		need?.answering.amounts.some((amount, week) => amount?.low !== all.amounts[week]?.high),
	)
	return (
		<>
			{others && <KeyEntry swatch="pale">sets that do not count for the need</KeyEntry>}
			<KeyEntry swatch="needed">
				needed for{' '}
				{[...because].map((title, index) => (
					<>
						{index > 0 && ', '}
						<bdi key={title}>{title}</bdi>
					</>
				))}
			</KeyEntry>
		</>
	)
}

/** Where the text leaves room, a bar's pale end is what may be done on top. */
function RangeKey({ measures }: { measures: readonly Measure[] }) {
	const ranges = measures.some(({ amounts }) => amounts.some(amount => amount !== null && amount.low !== amount.high))
	return ranges ? <KeyEntry swatch="pale">where the high end is done</KeyEntry> : null
}

/** What could not be counted is said, never taken for 0. */
function LeftOut({ volume }: { volume: WeeklyVolume }) {
	const reader = useContext(ReaderContext)
	const weeks = volume.weeks.filter(week => week.excludedSets > 0)
	if (weeks.length === 0) return null
	const parts = weeks.map(week => `week ${reader.number(week.week)}: ${counted(week.excludedSets, 'set')}`)
	return <p class="left-out">Not in the totals, because their load or length cannot be known – {parts.join('; ')}.</p>
}
