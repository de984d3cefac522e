import { useContext, useMemo } from 'preact/hooks'
import type { CappedMovement } from '../../../language/reports/cap-exposures.ts'
import type { LoadSheet } from '../../../language/reports/load-sheet.ts'
import type { WeekNeeds } from '../../../language/reports/preview.ts'
import type { WeeklyVolume } from '../../../language/reports/weekly-volume.ts'
import { capExposuresDrawing } from '../charts/cap-exposures.ts'
import { liftZonesDrawing } from '../charts/lift-zones.ts'
import { linkSecondsDrawing, linksDrawing } from '../charts/links.ts'
import { mainLiftDrawing } from '../charts/main-lift.ts'
import { muscleSetsDrawing } from '../charts/muscle-sets.ts'
import { counted } from '../counted.ts'
import { ReaderContext } from '../reader/context.ts'
import type { Reader } from '../reader/reader.ts'
import { unlessChanged, useUnchanged } from '../unchanged.ts'
import { ChartFigure } from './chart-figure.tsx'
import { Key, KeyEntry } from './key.tsx'
import {
	capMeasure,
	type LiftMeasures,
	type LiftZone,
	linkSeconds,
	linkSets,
	type Measure,
	mainLifts,
	muscleSets,
	type NeedMeasure,
	neededSessions,
	needRows,
	type WeekColumn,
	weekColumns,
} from './measures.ts'
import { volumeWords as words } from './words.ts'

export interface WeeklyVolumeViewProps {
	readonly volume: WeeklyVolume
	/** One entry for each of the weeks. */
	readonly needs: readonly (WeekNeeds | null)[]
	/** Says which lifts are main work; `null` for a block. */
	readonly sheet: LoadSheet | null
	/** Movements with a cap; their exposures are by the volume's weeks. */
	readonly caps: readonly CappedMovement[]
}

/** What the weeks add up to. */
export function WeeklyVolumeView({ volume, needs, sheet, caps }: WeeklyVolumeViewProps) {
	const reader = useContext(ReaderContext)
	// A chart is drawn again when its own numbers change, not with each key.
	const weeks = useUnchanged(useMemo(() => weekColumns(volume), [volume]))
	const muscles = useUnchanged(useMemo(() => muscleSets(volume, needs), [volume, needs]))
	const links = useUnchanged(useMemo(() => linkSets(volume, needs), [volume, needs]))
	const seconds = useUnchanged(useMemo(() => linkSeconds(volume), [volume]))
	const lifts = useUnchanged(useMemo(() => mainLifts(volume, sheet), [volume, sheet]))
	const drawings = {
		links: useMemo(() => linksDrawing(links, weeks, reader), [links, weeks, reader]),
		seconds: useMemo(() => linkSecondsDrawing(seconds, weeks, reader), [seconds, weeks, reader]),
		muscles: useMemo(() => muscleSetsDrawing(muscles, weeks, reader), [muscles, weeks, reader]),
	}
	const someLighter = weeks.some(week => week.deload)
	const lighter = someLighter && <KeyEntry swatch="lighter">{words.lighter}</KeyEntry>

	return (
		<div class="charts">
			<p class="aside about">{volume.unit === null ? words.weeksOfBlock : words.weeksOfPlan}</p>
			<ChartFigure
				name="links"
				title={words.links}
				about={words.linksAbout}
				drawing={drawings.links}
				span={spanFor(weeks)}
				weeks={weeks}
				rows={[...needRows(links.stability), ...needRows(links.drive), ...neededSessions(needs)]}
			>
				<Key>
					<KeyEntry swatch="stability">{words.stability}</KeyEntry>
					<KeyEntry swatch="drive">{words.drive}</KeyEntry>
					<NeedKey measures={[links.stability, links.drive]} />
					{lighter}
				</Key>
			</ChartFigure>
			<ChartFigure
				name="seconds"
				title={words.seconds}
				about={words.secondsAbout}
				drawing={drawings.seconds}
				span={spanFor(weeks)}
				weeks={weeks}
				rows={[seconds.stability, seconds.drive]}
			>
				<Key>
					<KeyEntry swatch="stability">{words.stability}</KeyEntry>
					<KeyEntry swatch="drive">{words.drive}</KeyEntry>
					<RangeKey measures={[seconds.stability, seconds.drive]} />
					{lighter}
				</Key>
			</ChartFigure>
			{muscles.length > 0 && (
				<ChartFigure
					name="muscles"
					title={words.muscles}
					about={words.musclesAbout}
					drawing={drawings.muscles}
					span="page"
					weeks={weeks}
					rows={muscles.flatMap(needRows)}
				>
					<Key>
						<KeyEntry swatch="volume">{words.sets}</KeyEntry>
						<NeedKey measures={muscles} />
						{lighter}
					</Key>
				</ChartFigure>
			)}
			{caps.length > 0 && <CapsFigure caps={caps} weeks={weeks} ofBlock={volume.unit === null} />}
			{lifts.map(lift => (
				<MainLift key={lift.lift} lift={lift} weeks={weeks} />
			))}
			<LeftOut volume={volume} />
		</div>
	)
}

const MainLift = unlessChanged(function MainLift({ lift, weeks }: { lift: LiftMeasures; weeks: readonly WeekColumn[] }) {
	const reader = useContext(ReaderContext)
	const lighter = weeks.some(week => week.deload) && <KeyEntry swatch="lighter">{words.lighter}</KeyEntry>
	const zones = lift.zones.map((zone): Measure => ({ name: zoneName(zone, reader), unit: null, amounts: zone.lifts }))
	return (
		<>
			<ChartFigure
				name={`lift-${lift.lift}`}
				title={lift.title}
				about={words.lift(lift.work.name, lift.work.unit)}
				drawing={mainLiftDrawing(lift, weeks, reader)}
				span={spanFor(weeks)}
				weeks={weeks}
				rows={[lift.sets, lift.reps, lift.work, lift.average, lift.top]}
			>
				<Key>
					<KeyEntry swatch="top">{words.top}</KeyEntry>
					<KeyEntry swatch="intensity">{words.intensity}</KeyEntry>
					<KeyEntry swatch="volume">{lift.work.unit === null ? words.relativeKey : words.tonnageKey}</KeyEntry>
					<RangeKey measures={[lift.work]} />
					{lighter}
				</Key>
			</ChartFigure>
			{zones.length > 0 && (
				<ChartFigure
					name={`zones-${lift.lift}`}
					title={words.zones(lift.title)}
					about={words.zonesAbout}
					drawing={liftZonesDrawing(zones, weeks, reader)}
					span={spanFor(weeks)}
					weeks={weeks}
					rows={zones}
				>
					<Key>
						{zones.map(({ name }, zone) => (
							<KeyEntry key={name} swatch={zoneSwatches[zone] ?? 'volume'}>
								{name}
							</KeyEntry>
						))}
						<RangeKey measures={zones} />
						{lighter}
					</Key>
				</ChartFigure>
			)}
		</>
	)
})

const zoneSwatches = ['zone-1', 'zone-2', 'zone-3', 'zone-4'] as const

function zoneName({ from, to }: LiftZone, reader: Reader): string {
	if (from === 0) return words.zonesUnder(reader.percent(String(to)))
	if (to === null) return words.zonesFrom(reader.percent(String(from)))
	return reader.percent(String(from), String(to - 1))
}

interface CapsFigureProps {
	readonly caps: readonly CappedMovement[]
	readonly weeks: readonly WeekColumn[]
	readonly ofBlock: boolean
}

const CapsFigure = unlessChanged(function CapsFigure({ caps, weeks, ofBlock }: CapsFigureProps) {
	const reader = useContext(ReaderContext)
	const measures = caps.map(cap => {
		const name = cap.fromPercent === null ? cap.title : words.capFrom(cap.title, reader.percent(cap.fromPercent))
		return {
			cap,
			name,
			measure: capMeasure(cap, name, words.limitOf(name)),
			limit: words.atMost(reader.number(cap.cap)),
		}
	})
	const sources = new Set(caps.flatMap(({ source }) => source ?? []))
	return (
		<ChartFigure
			name="caps"
			title={words.caps}
			about={`${ofBlock ? words.capsAboutBlock : words.capsAbout}${sources.size > 0 ? ` (${[...sources].join('; ')})` : ''}`}
			drawing={capExposuresDrawing(measures, weeks, reader)}
			span="page"
			weeks={weeks}
			rows={measures.flatMap(({ measure }) => (measure.need ? [measure.all, measure.need.needed] : []))}
		>
			<Key>
				<KeyEntry swatch="volume">{words.days}</KeyEntry>
				{caps.some(({ cap, exposures }) => exposures.some(days => days > cap)) && <KeyEntry swatch="over">{words.over}</KeyEntry>}
				<KeyEntry swatch="needed">{words.limit}</KeyEntry>
				{weeks.some(week => week.deload) && <KeyEntry swatch="lighter">{words.lighter}</KeyEntry>}
			</Key>
		</ChartFigure>
	)
})

function NeedKey({ measures }: { measures: readonly NeedMeasure[] }) {
	const because = new Set(measures.flatMap(({ need }) => need?.because ?? []))
	if (because.size === 0) return null
	const others = measures.some(({ all, need }) =>
		need?.answering.amounts.some((amount, week) => amount?.low !== all.amounts[week]?.high),
	)
	return (
		<>
			{others && <KeyEntry swatch="pale">{words.uncounted}</KeyEntry>}
			<KeyEntry swatch="needed">
				{words.neededFor}{' '}
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
	return ranges ? <KeyEntry swatch="pale">{words.highEnd}</KeyEntry> : null
}

/** More weeks than these need the width of the page. */
const longSeason = 26

function spanFor(weeks: readonly WeekColumn[]): 'page' | 'half' {
	return weeks.length > longSeason ? 'page' : 'half'
}

/** So many weeks are named one by one. */
const fewWeeks = 8

/** What could not be counted is said, never taken for 0. */
function LeftOut({ volume }: { volume: WeeklyVolume }) {
	const reader = useContext(ReaderContext)
	const weeks = volume.weeks.filter(week => week.excludedSets > 0)
	if (weeks.length === 0) return null
	const sets = weeks.map(week => week.excludedSets)
	const parts =
		weeks.length <= fewWeeks
			? weeks.map(week => words.leftOutWeek(reader.number(week.week), counted.set(week.excludedSets))).join('; ')
			: words.leftOutWeeks(
					reader.range(reader.number(Math.min(...sets)), reader.number(Math.max(...sets))),
					counted.week(weeks.length),
				)
	return <p class="left-out">{words.leftOut(parts)}</p>
}
