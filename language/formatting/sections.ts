import type { Definition } from '../model/definitions.ts'
import { type Line, linesOf } from '../parser/lines.ts'
import { DefinitionParser, type Parsed } from '../parser/parse.ts'
import { splitDefinitions } from '../parser/split.ts'
import { readDefinition } from '../reading/read.ts'
import type { TextReader } from '../workspace/text-file.ts'
import { breaksBetween, columnOf } from './source.ts'

/** A stretch of text, from its first character that means something to its last. */
interface Stretch {
	readonly start: number
	readonly end: number
}

/** A definition that reads, with its lines. */
export interface LaidOut extends Stretch {
	readonly lines: readonly Line[]
	readonly definition: Definition
}

/** What does not read: it stays as it is, with the comments in it. */
export interface Kept extends Stretch {
	readonly lines: undefined
}

export type Section = LaidOut | Kept

export interface Comment extends Stretch {
	readonly text: string
	/** It ends with its line: nothing can follow it there. */
	readonly toEndOfLine: boolean
}

export interface Sections {
	readonly sections: readonly Section[]
	/** The comments that stand in no kept section. */
	readonly comments: readonly Comment[]
}

/** What a text consists of, for what works on its layout. */
export function readSections(text: string, reader: TextReader): Sections {
	const { tokens, hidden, errors } = reader.tokenize(text)
	const parser = new DefinitionParser(reader.grammarServices)
	const parts = splitDefinitions(tokens, text.length).flatMap(stretch =>
		parser.parse(stretch, text).map(parsed => ({ parsed, start: stretch.start + parsed.start, end: stretch.start + parsed.end })),
	)
	const all = hidden.filter(token => token.tokenType.name.endsWith('_COMMENT')).map(commentOf)
	const unreadable: Stretch[] = [
		...errors.map(({ offset, length }) => ({ start: offset, end: offset + length })),
		...hidden.filter(token => token.tokenType.name === 'UNCLOSED_COMMENT').map(commentOf),
	]
	const sections: Section[] = []
	const firstStart = parts[0]?.start ?? text.length
	const lead = extentOf(unreadable.filter(one => one.start < firstStart))
	if (lead) sections.push(keep(text, lead, all, firstStart))
	for (const [index, { parsed, start, end }] of parts.entries()) {
		const faulty = unreadable.filter(one => one.start >= start && one.start < end)
		const own = extentOf([{ start, end: start + parsed.lastEnd }, ...faulty])!
		const definition = faulty.length === 0 ? definitionOf(parsed) : undefined
		if (definition) sections.push({ ...own, lines: linesOf(parsed, start), definition })
		else sections.push(keep(text, own, all, parts[index + 1]?.start ?? text.length))
	}
	const kept = sections.filter(section => !section.lines)
	const comments = all.filter(comment => !kept.some(({ start, end }) => comment.start >= start && comment.end <= end))
	return { sections, comments }
}

/** The definition, if nothing in it keeps a reader from seeing what belongs to what. */
function definitionOf(parsed: Parsed): Definition | undefined {
	const { definition, faults } = readDefinition(parsed, [])
	return faults.some(fault => fault.code === 'syntax') ? undefined : definition
}

function commentOf(token: { image: string; startOffset: number; tokenType: { name: string } }): Comment {
	const toEndOfLine = token.tokenType.name !== 'BLOCK_COMMENT'
	const text = toEndOfLine ? token.image.replace(/[ \t]+$/, '') : token.image
	return { text, start: token.startOffset, end: token.startOffset + token.image.length, toEndOfLine }
}

function extentOf(stretches: readonly Stretch[]): Stretch | undefined {
	if (stretches.length === 0) return undefined
	const start = stretches.reduce((least, one) => Math.min(least, one.start), Number.POSITIVE_INFINITY)
	return { start, end: stretches.reduce((most, one) => Math.max(most, one.end), 0) }
}

/** A section that stays, with the spaces before it, the comments behind it, and those below that are set in as its own lines are. */
function keep(text: string, { start, end }: Stretch, comments: readonly Comment[], next: number): Kept {
	const nextColumn = columnOf(text, next) ?? 0
	let last = end
	for (const comment of comments) {
		if (comment.start < last) continue
		if (comment.start >= next) break
		const behind = breaksBetween(text, last, comment.start) === 0
		const below = (columnOf(text, comment.start) ?? 0) > nextColumn
		// A comment on the line of the next definition is that one's.
		const before = next < text.length && breaksBetween(text, comment.end, next) === 0
		if (!behind && (!below || before)) break
		last = comment.end
	}
	return { start: start - (columnOf(text, start) ?? 0), end: last, lines: undefined }
}
