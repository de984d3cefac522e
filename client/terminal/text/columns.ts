import stringWidth from 'string-width'

/** Columns that a text takes on a terminal: wide letters take two, combining accents none. */
export function widthOf(text: string): number {
	return stringWidth(text)
}

export function padEnd(text: string, width: number): string {
	return text + ' '.repeat(Math.max(0, width - widthOf(text)))
}

export function padStart(text: string, width: number): string {
	return ' '.repeat(Math.max(0, width - widthOf(text))) + text
}

/** Breaks a text into lines of at most `width` columns at its spaces; a longer word stands alone on its line. */
export function wrap(text: string, width: number): string[] {
	const lines: string[] = []
	let line = ''
	for (const word of text.split(/\s+/)) {
		if (word === '') continue
		if (line === '') line = word
		else if (widthOf(line) + 1 + widthOf(word) <= width) line += ` ${word}`
		else {
			lines.push(line)
			line = word
		}
	}
	return [...lines, line]
}

/** A text in lines of at most `width` columns, all of them set in by `indent` spaces. */
export function paragraph(text: string, indent: number, width: number): string {
	return wrap(text, width - indent)
		.map(line => ' '.repeat(indent) + line)
		.join('\n')
}

export interface Column {
	readonly title: string
	/** Numbers stand on the right, words on the left. */
	readonly align?: 'left' | 'right'
}

/** Lays out rows of cells, each column as wide as its widest cell; a column without any text in its rows is left out. */
export class Table {
	private readonly kept: readonly (Column & { readonly index: number; readonly width: number })[]

	/** @param rows All that will stand in it, also where it is shown in parts. */
	constructor(columns: readonly Column[], rows: readonly (readonly string[])[]) {
		this.kept = columns.flatMap((column, index) => {
			const widths = rows.map(row => widthOf(row[index] ?? ''))
			return widths.some(width => width > 0) ? [{ ...column, index, width: Math.max(widthOf(column.title), ...widths) }] : []
		})
	}

	get heads(): string {
		return this.line(column => column.title)
	}

	row(cells: readonly string[]): string {
		return this.line(({ index }) => cells[index] ?? '')
	}

	/** A line ends where its text does. */
	private line(cell: (column: (typeof this.kept)[number]) => string): string {
		return this.kept
			.map(column => (column.align === 'right' ? padStart : padEnd)(cell(column), column.width))
			.join('   ')
			.trimEnd()
	}
}
