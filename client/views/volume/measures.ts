import type { Unit } from '../../../language/model/quantities.ts'
import type { Link } from '../../../language/model/vocabulary.ts'
import type { CappedMovement } from '../../../language/reports/cap-exposures.ts'
import type { LoadSheet } from '../../../language/reports/load-sheet.ts'
import type { NeededWork, WeekNeeds } from '../../../language/reports/preview.ts'
import type { WeeklyVolume } from '../../../language/reports/weekly-volume.ts'
import { own } from '../reader/own.ts'
import { spokenName } from '../reader/words.ts'
import { volumeWords as words } from './words.ts'

/** One week's figure, as decimal strings: both ends of a range, equal where one number is known; `null` where there is none. */
export type Amount = { readonly low: string; readonly high: string } | null

/** What one row of bars shows. The chart and the table beside it are both made from this, so that they cannot differ. */
export interface Measure {
	readonly name: string
	readonly unit: Unit | '%' | 's' | null
	/** By week. */
	readonly amounts: readonly Amount[]
}

/** Sets with the part of them that answers the lifter's breakdowns, and how much is needed. */
export interface NeedMeasure {
	readonly name: string
	readonly all: Measure
	/** `null` where no week needs any. */
	readonly need: Need | null
}

export interface Need {
	readonly answering: Measure
	readonly needed: Measure
	/** Titles of the breakdowns that ask for it. */
	readonly because: readonly string[]
}

export const links: readonly Link[] = ['stability', 'drive']

export interface WeekColumn {
	readonly week: number
	readonly deload: boolean
}

export function weekColumns(volume: WeeklyVolume): WeekColumn[] {
	return volume.weeks.map(({ week, deload }) => ({ week, deload }))
}

type Needs = readonly (WeekNeeds | null)[]

/** Hard sets by muscle: those that are needed first, then by how much they get. */
export function muscleSets(volume: WeeklyVolume, needs: Needs): NeedMeasure[] {
	const names = new Set(volume.weeks.flatMap(week => Object.keys(week.muscles)))
	for (const week of needs) for (const muscle of Object.keys(week?.muscles ?? {})) names.add(muscle)
	const rows = [...names].map(muscle =>
		needMeasure(
			spokenName(muscle),
			volume.weeks.map(week => {
				const low = own(week.muscles, muscle) ?? '0'
				return { low, high: own(week.musclesTo, muscle) ?? low }
			}),
			needs.map(week => (week ? own(week.muscles, muscle) : undefined)),
		),
	)
	const total = ({ all }: NeedMeasure) => all.amounts.reduce((sum, amount) => sum + Number(amount?.low ?? 0), 0)
	return rows.sort((a, b) => Number(b.need !== null) - Number(a.need !== null) || total(b) - total(a))
}

/** Hard sets by the link they train first. */
export function linkSets(volume: WeeklyVolume, needs: Needs): Readonly<Record<Link, NeedMeasure>> {
	const measure = (link: Link) =>
		needMeasure(
			words.link[link],
			volume.weeks.map(week => ends(week.links[link].sets, week.links[link].setsTo)),
			needs.map(week => week?.links[link]),
		)
	return { stability: measure('stability'), drive: measure('drive') }
}

/** Sessions that answer against sessions that are needed, for the links of which a breakdown needs any. */
export function neededSessions(needs: Needs): Measure[] {
	return links.flatMap(link => {
		const works = needs.map(week => week?.links[link])
		if (!works.some(work => work?.sessions)) return []
		const name = words.link[link]
		return [
			{ name: words.sessionsAnswering(name), unit: null, amounts: works.map(work => ends(work?.answeringSessions)) },
			{ name: words.sessionsNeeded(name), unit: null, amounts: works.map(work => ends(work?.sessions)) },
		]
	})
}

/** Seconds under tension by link. */
export function linkSeconds(volume: WeeklyVolume): Readonly<Record<Link, Measure>> {
	const measure = (link: Link): Measure => ({
		name: words.link[link],
		unit: 's',
		amounts: volume.weeks.map(week => ends(week.links[link].seconds, week.links[link].secondsTo)),
	})
	return { stability: measure('stability'), drive: measure('drive') }
}

export interface LiftMeasures {
	readonly lift: string
	readonly title: string
	/** Tonnage, or sets × reps × percent where there is no lifter. */
	readonly work: Measure
	readonly average: Measure
	readonly top: Measure
	readonly sets: Measure
	readonly reps: Measure
	/** Number of lifts by zone of intensity, the lightest first; empty where no lift has a percent. */
	readonly zones: readonly LiftZone[]
}

export interface LiftZone {
	/** Percent in which the zone begins and, not in it any more, ends: [0, 70), [70, 80), [80, 90), [90, ∞). */
	readonly from: number
	readonly to: number | null
	readonly lifts: readonly Amount[]
}

const zoneEdges = [0, 70, 80, 90] as const

/** The lifts that stand as main work in the sheet; without a sheet, those with an intensity. In the order in which they first stand. */
export function mainLifts(volume: WeeklyVolume, sheet: LoadSheet | null): LiftMeasures[] {
	const main =
		sheet && new Set(sheet.sessions.flatMap(s => s.items.filter(item => item.role === 'main').map(item => item.movement)))
	const names = new Set(
		volume.weeks.flatMap(week =>
			Object.entries(week.lifts)
				.filter(([name, lift]) => (main ? main.has(name) : lift.averagePercent !== null))
				.map(([name]) => name),
		),
	)
	// A lift whose loads the lifter finds at the bar has nothing to draw.
	return [...names]
		.map(name => liftMeasures(volume, name))
		.filter(({ work, average }) => [...work.amounts, ...average.amounts].some(amount => Number(amount?.high ?? 0) > 0))
}

function liftMeasures(volume: WeeklyVolume, lift: string): LiftMeasures {
	const weeks = volume.weeks.map(week => own(week.lifts, lift))
	const known = weeks.find(week => week !== undefined)
	const tons = weeks.some(week => week?.tonnage)
	return {
		lift,
		title: known?.title ?? spokenName(lift),
		work: tons
			? { name: words.tonnage, unit: volume.unit, amounts: weeks.map(week => week?.tonnage ?? null) }
			: { name: words.relative, unit: null, amounts: weeks.map(week => week?.relative ?? null) },
		average: {
			name: words.average,
			unit: '%',
			amounts: weeks.map(week => ends(week?.averagePercent, week?.averagePercentTo)),
		},
		top: { name: words.heaviest, unit: '%', amounts: weeks.map(week => ends(week?.topPercent, week?.topPercentTo)) },
		sets: { name: words.allOfThem, unit: null, amounts: weeks.map(week => ends(week?.sets, week?.setsTo)) },
		reps: {
			name: words.reps,
			unit: null,
			amounts: weeks.map(week => ends(week?.reps.low, week?.reps.high)),
		},
		zones: weeks.some(week => week?.zones.some(zone => zone.high > 0))
			? zoneEdges.map((from, zone) => ({
					from,
					to: zoneEdges[zone + 1] ?? null,
					lifts: weeks.map(week => ends(week?.zones[zone]?.low, week?.zones[zone]?.high)),
				}))
			: [],
	}
}

/** Days of a capped movement against its cap: up to it, and over it. `name` is a name for each. */
export function capMeasure(cap: CappedMovement, name: string, limitName: string): NeedMeasure {
	const amounts = (numbers: readonly number[]): Amount[] => numbers.map(number => ends(number))
	return {
		name,
		all: { name, unit: null, amounts: amounts(cap.exposures) },
		need: {
			answering: { name, unit: null, amounts: amounts(cap.exposures.map(days => Math.min(days, cap.cap))) },
			needed: { name: limitName, unit: null, amounts: amounts(cap.exposures.map(() => cap.cap)) },
			because: [],
		},
	}
}

function needMeasure(name: string, amounts: readonly Amount[], works: readonly (NeededWork | undefined)[]): NeedMeasure {
	const all: Measure = { name: words.allSets(name), unit: null, amounts }
	if (!works.some(work => work?.sets)) return { name, all: { ...all, name }, need: null }
	return {
		name,
		all,
		need: {
			answering: { name: words.answering(name), unit: null, amounts: amounts.map((_, week) => ends(works[week]?.answeringSets)) },
			needed: { name: words.needed(name), unit: null, amounts: amounts.map((_, week) => ends(works[week]?.sets)) },
			because: [...new Set(works.flatMap(work => work?.because ?? []))],
		},
	}
}

/** @param to the high end, where there is one that differs */
function ends(from: string | number | null | undefined, to?: string | number | null): Amount {
	if (from === null || from === undefined) return null
	return { low: String(from), high: String(to ?? from) }
}

/** The rows of the table that says what a need chart draws. */
export function needRows({ all, need }: NeedMeasure): Measure[] {
	return need === null ? [all] : [all, need.answering, need.needed]
}
