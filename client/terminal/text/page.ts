import { paragraph, Table, wrap } from './columns.ts'
import type { Style } from './style.ts'

/** The mark that the examples of a page carry for whoever tests them. */
const mark = /\s*\/\/ expect: .*$/

/** A rule's page as it reads on a terminal: headings, paragraphs, lists, and examples set in with a mark on what is reported. */
export function pageText(page: string, style: Style, width: number): string {
	// Every second part stands within a fence.
	const parts = page.split(/^```.*\n/m)
	return parts.flatMap((part, index) => (index % 2 === 1 ? [example(part, style)] : proseOf(part, style, width))).join('\n\n')
}

function proseOf(part: string, style: Style, width: number): string[] {
	const blocks = part.split(/\n{2,}/).map(block => block.trim())
	return blocks.filter(block => block !== '').map(block => proseBlock(block, style, width))
}

function proseBlock(block: string, style: Style, width: number): string {
	const heading = /^#+ (.*)$/.exec(block)?.[1]
	if (heading !== undefined) return style.strong(heading.replaceAll('`', ''))
	if (block.startsWith('|')) return table(block, style)
	if (!block.startsWith('- ')) return written(paragraph(block, 0, width), style)
	const items = block.split(/^- /m).filter(item => item !== '')
	return items.map(item => written(`- ${wrap(item, width - 2).join('\n  ')}`, style)).join('\n')
}

/** A table as columns, without its rules. */
function table(block: string, style: Style): string {
	const rows = block
		.split('\n')
		.filter(line => !/^\|[\s|:-]+\|$/.test(line))
		.map(line =>
			line
				.split('|')
				.slice(1, -1)
				.map(cell => cell.trim().replaceAll('`', '')),
		)
	const [heads = [], ...others] = rows
	const laidOut = new Table(
		heads.map(title => ({ title })),
		others,
	)
	return [style.strong(laidOut.heads), ...others.map(cells => laidOut.row(cells))].map(line => `  ${line}`).join('\n')
}

/** What stands between backticks is a stretch of a text: set off by a colour, else by quotes. */
export function written(text: string, style: Style): string {
	return text.replace(/`([^`]+)`/g, (_, words: string) => style.written(words))
}

function example(text: string, style: Style): string {
	return text
		.trimEnd()
		.split('\n')
		.map(line => {
			const marked = mark.test(line)
			const words = `    ${line.replace(mark, '')}`.trimEnd()
			return marked ? `${style.level('warning', words)}${style.quiet('   ← reported')}` : words
		})
		.join('\n')
}
