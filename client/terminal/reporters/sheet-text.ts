import type { LoadSheet, SheetItem, SheetSession, SheetSet } from '../../../language/reports/load-sheet.ts'
import { generalCaution } from '../../views/general-caution.ts'
import { readerOf } from '../../views/reader/reader.ts'
import { spokenName } from '../../views/reader/words.ts'
import { type FoldedSets, foldSets } from '../../views/sheet/fold.ts'
import { discsOf, effortOf, loadOf, percentOf, setsAndWork } from '../../views/sheet/wording.ts'
import { type Column, paragraph, Table } from '../text/columns.ts'
import { plain } from '../text/plain.ts'
import type { Style } from '../text/style.ts'

/** What the sheet for people says beside the sheet itself. */
export interface SheetSetting {
	readonly style: Style
	readonly width: number
	/** Plan and lifter, as people call them. */
	readonly heading: string
	/** Titles of blocks and gyms by their names. */
	blockTitle(name: string): string
	gymTitle(name: string): string
	readonly meets: readonly { readonly date: string; readonly title: string }[]
	/** Of the lifter's own breakdowns. */
	readonly cautions: readonly string[]
}

/** Numbers and dates are written as the language writes them. */
const reader = readerOf(null)

const columns: readonly Column[] = [
	{ title: 'Movement' },
	{ title: 'Sets' },
	{ title: 'Load', align: 'right' },
	{ title: 'Discs a side' },
	{ title: 'Intensity' },
	{ title: 'Tempo' },
	{ title: 'Rest', align: 'right' },
]

/** The plan for a lifter at the bar: week by week, session by session, one line for sets that are alike. */
export function sheetText(sheet: LoadSheet, setting: SheetSetting): string {
	const { style, width, heading, meets, cautions } = setting
	const facts = [
		`Loads in ${sheet.unit}, discs for one side of the bar.`,
		...meets.map(meet => `${meet.title || 'Meet'} on ${meet.date}.`),
	]
	const head = [style.strong(heading), style.quiet(plain(facts.join(' ')))].join('\n')
	const rows = sheet.sessions.flatMap(session => session.items.flatMap(itemRows))
	const table = new Table(columns, rows)
	const weeks = Map.groupBy(sheet.sessions, session => session.planWeek)
	const body = [...weeks].map(([week, sessions]) => weekText(week, sessions, table, setting))
	if (body.length === 0) body.push('There is nothing to do: no session falls into these weeks.')
	const foot = [...cautions, generalCaution].map(caution => style.quiet(paragraph(plain(caution), 0, width)))
	return [head, ...body, foot.join('\n')].join('\n\n')
}

function weekText(week: number, sessions: readonly SheetSession[], table: Table, setting: SheetSetting): string {
	const { style } = setting
	const blocks = new Set(sessions.map(({ block, week }) => `${setting.blockTitle(block)}, its week ${week}`))
	const lighter = sessions.some(session => session.deload) ? ['lighter week'] : []
	const title = style.heading(plain(`Week ${week}`)) + style.quiet(plain(`  ${[...blocks, ...lighter].join(' · ')}`))
	return [title, ...sessions.map(session => sessionText(session, table, setting))].join('\n\n')
}

function sessionText(session: SheetSession, table: Table, setting: SheetSetting): string {
	const { style, width } = setting
	const day = session.weekday.charAt(0).toUpperCase() + session.weekday.slice(1)
	const name = session.title ?? spokenName(session.session)
	const beside = [`about ${session.minutes} min`, ...(session.gym === null ? [] : [setting.gymTitle(session.gym)])]
	const head = `  ${style.strong(plain(`${day}${session.part === null ? '' : ` ${session.part}`} ${session.date}  ${name}`))}${style.quiet(plain(`  ${beside.join(' · ')}`))}`
	const rows = [style.quiet(table.heads), ...session.items.flatMap(itemRows).map(row => table.row(row))]
	const remarks = [...session.notes, ...session.items.flatMap(itemRemarks)]
	return [head, ...rows.map(row => `    ${row}`), ...remarks.map(remark => style.quiet(paragraph(plain(remark), 4, width)))].join(
		'\n',
	)
}

/** One row for sets that are alike; the movement stands on the first. */
function itemRows(item: SheetItem): string[][] {
	const name = itemName(item)
	const folds = foldSets(item.sets)
	if (folds.length === 0) return [[name, 'as needed']]
	return folds.map((fold, index) =>
		[index === 0 ? name : '', ...cells(fold, item)].map(cell => plain(cell.replaceAll('\u00a0', ' '))),
	)
}

function itemName(item: SheetItem): string {
	const role = item.role === 'main' || item.role === 'accessory' ? '' : ` (${item.role})`
	return `${item.withItemAbove ? '+ ' : ''}${item.title}${role}`
}

function cells(fold: FoldedSets, item: SheetItem): string[] {
	const { set } = fold
	const sets = setsAndWork(fold, reader) + (set.eachSide ? ' each side' : '')
	return [
		sets,
		loadCell(set, item),
		discsOf(set, reader) ?? '',
		[percentOf(set, reader), effortOf(set, reader)].filter(Boolean).join(', '),
		set.tempo ?? '',
		restCell(set),
	]
}

function loadCell(set: SheetSet, item: SheetItem): string {
	const load = loadOf(set, item, reader)
	if (load === null) return set.reason !== null ? '?' : item.role === 'test' ? 'open' : ''
	return item.hands > 1 ? `${load} each hand` : load
}

function restCell(set: SheetSet): string {
	return set.restSeconds === null ? '' : reader.duration(set.restSeconds)
}

/** What no column has room for. */
function itemRemarks(item: SheetItem): string[] {
	const swapped = item.insteadOf === null ? [] : [`in place of ${item.insteadOf}`]
	const reasons = new Set(item.sets.flatMap(set => (set.reason === null ? [] : [set.reason])))
	return [...swapped, ...reasons, ...item.milestones, ...item.notes].map(remark => `${item.title}: ${remark}`)
}
