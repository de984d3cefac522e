import type { Titles } from '../../language/reports/preview.ts'
import type { LiftVolume, VolumeWeek, WeeklyVolume } from '../../language/reports/weekly-volume.ts'
import { blockTitle, spokenName } from '../views/reader/words.ts'
import { type CsvColumn, csvOf, written } from './csv.ts'

/** One figure: what it counts, in which unit, and both ends where it is a range. */
interface Figure {
	readonly figure: string
	readonly unit: string
	readonly low: string | number | null
	readonly high: string | number | null
}

interface Row extends Figure {
	readonly week: VolumeWeek
	readonly of: 'week' | 'movement' | 'muscle' | 'link'
	/** As the text writes it; empty for the week as a whole. */
	readonly name: string
	readonly title: string
}

/**
 * The weekly volume as a table, one row a figure: a spreadsheet filters and pivots it, and a figure more is a row more, never another
 * column.
 */
export function volumeCsv(volume: WeeklyVolume, titles: Titles): string {
	return csvOf(
		columnsFor(titles),
		volume.weeks.flatMap(week => rowsOf(week, volume.unit)),
	)
}

function columnsFor(titles: Titles): CsvColumn<Row>[] {
	return [
		{ title: 'Week', cell: ({ week }) => week.week },
		{ title: 'Monday', cell: ({ week }) => week.from },
		{ title: 'Block', cell: ({ week }) => written(blockTitle(titles, week.block)) },
		{ title: 'Week of block', cell: ({ week }) => week.blockWeek },
		{ title: 'Lighter week', cell: ({ week }) => week.deload },
		{ title: 'Of', cell: ({ of }) => of },
		{ title: 'Name', cell: ({ name }) => written(name) },
		{ title: 'Title', cell: ({ title }) => written(title) },
		{ title: 'Figure', cell: ({ figure }) => figure },
		{ title: 'Unit', cell: ({ unit }) => unit },
		{ title: 'From', cell: ({ low }) => low },
		{ title: 'To', cell: ({ low, high }) => high ?? low },
	]
}

function rowsOf(week: VolumeWeek, unit: WeeklyVolume['unit']): Row[] {
	const of = (kind: Row['of'], name: string, title: string, figures: readonly Figure[]) =>
		figures.filter(({ low }) => low !== null).map(figure => ({ ...figure, week, of: kind, name, title }))
	return [
		...of('week', '', '', [
			one('Sessions', '', week.sessions),
			one('Length', 'min', week.minutes),
			one('Sets not counted', '', week.excludedSets),
		]),
		...Object.entries(week.lifts).flatMap(([name, lift]) => of('movement', name, lift.title, liftFigures(lift, unit))),
		...Object.entries(week.muscles).flatMap(([name, sets]) =>
			of('muscle', name, spokenName(name), [
				{ figure: 'Hard sets', unit: '', low: sets, high: Object.hasOwn(week.musclesTo, name) ? week.musclesTo[name]! : null },
			]),
		),
		...Object.entries(week.links).flatMap(([name, link]) =>
			of('link', name, spokenName(name), [
				{ figure: 'Hard sets', unit: '', low: link.sets, high: link.setsTo },
				{ figure: 'Under tension', unit: 's', low: link.seconds, high: link.secondsTo },
			]),
		),
	]
}

const zones = ['below 70 %', 'from 70 to below 80 %', 'from 80 to below 90 %', 'from 90 %']

function liftFigures(lift: LiftVolume, unit: WeeklyVolume['unit']): Figure[] {
	return [
		one('Days with it', '', lift.sessions),
		{ figure: 'Sets', unit: '', low: lift.sets, high: lift.setsTo },
		{ figure: 'Repetitions', unit: '', ...lift.reps },
		...(lift.tonnage === null ? [] : [{ figure: 'Tonnage', unit: unit ?? '', ...lift.tonnage }]),
		...(lift.relative === null ? [] : [{ figure: 'Sets × reps × percent', unit: '', ...lift.relative }]),
		{ figure: 'Average intensity', unit: '%', low: lift.averagePercent, high: lift.averagePercentTo },
		{ figure: 'Heaviest set', unit: '%', low: lift.topPercent, high: lift.topPercentTo },
		...lift.zones.map((lifts, zone) => ({ figure: `Lifts ${zones[zone]}`, unit: '', ...lifts })),
		{ figure: 'Under tension', unit: 's', ...lift.seconds },
		{ figure: 'Held', unit: 's', ...lift.holdSeconds },
		{ figure: 'Carried', unit: 'm', ...lift.carryMetres },
		one('Sets not counted', '', lift.excludedSets),
	]
}

function one(figure: string, unit: string, value: number): Figure {
	return { figure, unit, low: value, high: null }
}
