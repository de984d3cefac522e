import stringWidth from 'string-width'
import type { Line } from '../parser/lines.ts'
import { type Element, isComment } from './element.ts'

/** Comments further apart than this many columns are not brought under each other: one long line would push all others away. */
const widestShift = 24

/** What is brought under what stands in the rows above it, and the columns before it on its row. */
interface Cell {
	readonly element: Element
	readonly width: number
}

/** Puts what is done in the weeks of an item under each other. */
export function alignWeeks(elements: readonly Element[]): void {
	const items = new Map<Line, Cell[]>()
	for (const row of rowsOf(elements)) {
		const colon = row.findIndex(({ type, line }) => type === ':' && line?.kind === 'WeekLine')
		const element = row[colon + 1]
		const item = row[colon]?.line?.above
		if (!item || !element || row.slice(0, colon + 2).some(isComment)) continue
		const cells = items.get(item) ?? []
		cells.push({ element, width: widthOf(row.slice(0, colon + 1)) })
		items.set(item, cells)
	}
	for (const cells of items.values()) align(cells)
}

/** Puts the comments at the ends of lines that follow each other under each other. */
export function alignComments(elements: readonly Element[]): void {
	let cells: Cell[] = []
	let least = 0
	let most = 0
	for (const row of rowsOf(elements)) {
		const cell = commentBehind(row)
		const width = cell?.width ?? 0
		const joins = cell && row[0]!.breaks === 1 && Math.max(most, width) - Math.min(least, width) <= widestShift
		if (!joins) {
			align(cells)
			cells = []
			least = width
			most = width
		}
		if (!cell) continue
		cells.push(cell)
		least = Math.min(least, width)
		most = Math.max(most, width)
	}
	align(cells)
}

/** The first of the comments at the end of a row that has something else before them. */
function commentBehind(row: readonly Element[]): Cell | undefined {
	const index = row.findLastIndex(element => !isComment(element)) + 1
	const element = row[index]
	if (!element || index === 0 || row.some(({ kind, text }) => kind === 'kept' || /[\r\n]/.test(text))) return undefined
	return { element, width: widthOf(row.slice(0, index)) }
}

function align(cells: readonly Cell[]): void {
	const widest = cells.reduce((most, { width }) => Math.max(most, width), 0)
	for (const { element, width } of cells) element.spaces = 1 + widest - width
}

/** What stands on one line. */
function rowsOf(elements: readonly Element[]): Element[][] {
	const rows: Element[][] = []
	for (const element of elements) {
		if (element.breaks > 0 || rows.length === 0) rows.push([element])
		else rows[rows.length - 1]!.push(element)
	}
	return rows
}

/** Columns up to the end of what stands in a row; wide letters take two. */
function widthOf(row: readonly Element[]): number {
	const text = row.map(({ text, spaces }) => ' '.repeat(spaces) + text).join('')
	return stringWidth(text.slice(Math.max(text.lastIndexOf('\n'), text.lastIndexOf('\r')) + 1))
}
