import type { SheetItem, SheetRange, SheetSession, SheetSet } from '../../language/reports/load-sheet.ts'
import { readerOf } from '../views/reader/reader.ts'
import { blockTitle, gymTitle, spokenName } from '../views/reader/words.ts'
import { workOf } from '../views/sheet/wording.ts'
import type { SheetContent } from './content.ts'
import { type Cell, type CsvColumn, csvOf, written } from './csv.ts'

interface Row {
	readonly session: SheetSession
	readonly item: SheetItem
	/** From 1. */
	readonly number: number
	/** `null` for a warm-up that needs no numbers: it is a line of the sheet, without a set. */
	readonly set: SheetSet | null
}

/** Figures are for a program to read: decimal points and ISO dates, whatever the reader's language. */
const reader = readerOf(null)

/** The load sheet as a table, one row a set in the order done: the figures of the JSON, under titles that a coach knows. */
export function sheetCsv({ sheet, titles }: Pick<SheetContent, 'sheet' | 'titles'>): string {
	const rows = (sheet?.sessions ?? []).flatMap(session => session.items.flatMap(item => rowsOf(session, item)))
	return csvOf(columnsFor(titles), rows)
}

function rowsOf(session: SheetSession, item: SheetItem): Row[] {
	if (item.sets.length === 0) return [{ session, item, number: 1, set: null }]
	return item.sets.map((set, index) => ({ session, item, number: index + 1, set }))
}

function columnsFor(titles: SheetContent['titles']): CsvColumn<Row>[] {
	return [
		{ title: 'Date', cell: ({ session }) => session.date },
		{ title: 'Weekday', cell: ({ session }) => spokenName(session.weekday) },
		{ title: 'Part of the day', cell: ({ session }) => session.part },
		{ title: 'Week', cell: ({ session }) => session.planWeek },
		{ title: 'Block', cell: ({ session }) => written(blockTitle(titles, session.block)) },
		{ title: 'Week of block', cell: ({ session }) => session.week },
		{ title: 'Lighter week', cell: ({ session }) => session.deload },
		{ title: 'Session', cell: ({ session }) => written(session.title ?? spokenName(session.session)) },
		{ title: 'Gym', cell: ({ session }) => (session.gym === null ? null : written(gymTitle(titles, session.gym))) },
		{ title: 'Movement', cell: ({ item }) => written(item.title) },
		{ title: 'Role', cell: ({ item }) => item.role },
		{ title: 'In place of', cell: ({ item }) => written(item.insteadOf) },
		{ title: 'Back to back with the one above', cell: ({ item }) => item.withItemAbove },
		ofSet('Set', (_, { number }) => number),
		ofSet('Optional', set => set.optional),
		ofSet('Work', set => workOf(set, reader)?.replaceAll('\u00a0', ' ') ?? null),
		...range('Reps', set => set.reps),
		ofSet('Reps or more', set => set.openEnded),
		ofSet('Reps in a cluster', set => set.clusterReps),
		ofSet('Rest between clusters in seconds', set => set.clusterRestSeconds),
		...range('Seconds', set => set.seconds),
		ofSet('For reps', set => set.forReps),
		...range('Metres', set => set.metres),
		ofSet('For time', set => set.forTime),
		ofSet('Each side', set => set.eachSide),
		...range('Percent', set => set.percent),
		ofSet('Percent of', set => set.of?.replaceAll('-', ' ') ?? null),
		...range('RPE', set => set.rpe),
		...range('RIR', set => set.rir),
		ofSet('Effort at most', set => set.effortAtMost),
		ofSet('Until RPE', set => set.untilRpe),
		ofSet('Until RIR', set => set.untilRir),
		ofSet('Load before rounding', set => set.exact),
		ofSet('Load', set => set.load),
		ofSet('Load to', set => set.loadTo),
		ofSet('Unit', set => set.unit),
		{ title: 'Implements at once', cell: ({ item }) => item.hands },
		{ title: 'On top of bodyweight', cell: ({ item }) => item.loadAdded },
		ofSet('Discs a side', set => set.perSide?.join(' + ') ?? null),
		ofSet('Tempo', set => set.tempo),
		ofSet('Rest in seconds', set => set.restSeconds),
		ofSet('Remark on the load', set => written(set.reason)),
		{ title: 'Next steps', cell: ({ item }) => written(...item.milestones) },
		{ title: 'Notes on the movement', cell: ({ item }) => written(...item.notes) },
		{ title: 'Notes on the session', cell: ({ session }) => written(...session.notes) },
	]
}

function ofSet(title: string, cell: (set: SheetSet, row: Row) => Cell): CsvColumn<Row> {
	return { title, cell: row => (row.set === null ? null : cell(row.set, row)) }
}

/** One column for a number, and one for the high end where it is a range. */
function range<T extends string | number>(title: string, of: (set: SheetSet) => SheetRange<T> | null): CsvColumn<Row>[] {
	const end = (range: SheetRange<T> | null) => (range === null || range.to === range.from ? null : range.to)
	return [ofSet(title, set => of(set)?.from ?? null), ofSet(`${title} to`, set => end(of(set)))]
}
