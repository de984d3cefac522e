import Papa from 'papaparse'

/**
 * What a cell holds. Our own words and figures are written as they are; only what a person wrote may look like a formula without being
 * one.
 */
export type Cell = string | number | boolean | null | Written

/** Words from a text that anyone may have written. */
export interface Written {
	readonly written: string
}

/** Words from somebody's text, several of them under each other. */
export function written(...texts: readonly (string | null)[]): Written {
	return { written: texts.filter(text => text !== null).join('\n') }
}

export interface CsvColumn<T> {
	readonly title: string
	cell(row: T): Cell
}

/** Excel reads UTF-8 only where a byte order mark says so; every other reader takes it away. */
const byteOrderMark = '\ufeff'

/**
 * A table as RFC 4180 has it: lines end with CR LF, the first holds the titles, what has commas, quotes or line breaks stands in quotes.
 */
export function csvOf<T>(columns: readonly CsvColumn<T>[], rows: readonly T[]): string {
	const titles = columns.map(column => column.title)
	const lines = [titles, ...rows.map(row => columns.map(column => plainCell(column.cell(row))))]
	// A last line may end without a line break; one that has it can be added to.
	return `${byteOrderMark}${Papa.unparse(lines, { newline: '\r\n' })}\r\n`
}

function plainCell(cell: Cell): string | number {
	if (cell === null) return ''
	if (typeof cell === 'boolean') return cell ? 'yes' : 'no'
	return typeof cell === 'object' ? harmless(cell.written) : cell
}

/**
 * A spreadsheet takes a cell for a formula that begins so, and a formula can fetch and send. With an apostrophe before it, it is text.
 * Source: OWASP, CSV Injection (https://owasp.org/www-community/attacks/CSV_Injection); the full-width signs are taken for the others by
 * spreadsheets of East Asia.
 */
const startOfFormula = /^[=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20]/

function harmless(text: string): string {
	return startOfFormula.test(text) ? `'${text}` : text
}
