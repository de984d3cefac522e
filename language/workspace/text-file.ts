import type { ILexingError, IToken } from 'chevrotain'
import type { Fault, Part } from '../model/reading.ts'
import { meansNothing } from '../parser/messages.ts'
import { DefinitionParser, spanOf } from '../parser/parse.ts'
import { createBarstaveServices } from '../parser/services.ts'
import { splitDefinitions } from '../parser/split.ts'
import { readDefinition } from '../reading/read.ts'

/** A part and where it stands in its file. */
export interface PlacedPart extends Part {
	readonly start: number
}

/** A file's text, read. Parts whose text has not changed are the very objects of the reading before. */
export interface TextFile {
	readonly uri: string
	readonly text: string
	readonly parts: readonly PlacedPart[]
}

/** What was done, for tests and the bench. */
export interface ReadingCounters {
	definitionsRead: number
	definitionsKept: number
}

/** A stretch of text from one definition word to the next, with what was read out of it. */
interface Stretch {
	readonly parts: readonly { readonly part: Part; readonly start: number }[]
}

/** More stretches of unreadable characters than this, in one part, tell a reader nothing new. */
const mostUnreadable = 3

/** Reads texts into parts; one reader serves a whole workspace. */
export class TextReader {
	readonly counters: ReadingCounters = { definitionsRead: 0, definitionsKept: 0 }
	private readonly services = createBarstaveServices()
	private readonly parser = new DefinitionParser(this.services)
	private readonly stretches = new WeakMap<TextFile, Map<string, Stretch[]>>()

	/** The lexer's view of a text, comments beside the tokens: for what works on layout. */
	tokenize(text: string) {
		return this.services.parser.Lexer.tokenize(text)
	}

	/** Langium's services, for completion by the grammar. */
	get grammarServices() {
		return this.services
	}

	/** Reads a text; `previous` is the last reading of the same file, whose unchanged parts are kept. */
	read(uri: string, text: string, previous?: TextFile): TextFile {
		const { tokens, hidden, errors } = this.services.parser.Lexer.tokenize(text)
		const unclosed = hidden.filter(token => token.tokenType.name === 'UNCLOSED_COMMENT')
		const known = new Map([...((previous && this.stretches.get(previous)) ?? [])].map(([key, list]) => [key, [...list]]))
		const kept = new Map<string, Stretch[]>()
		const parts: PlacedPart[] = []
		const keep = (key: string, start: number, stretch: Stretch) => {
			kept.set(key, [...(kept.get(key) ?? []), stretch])
			for (const { part, start: within } of stretch.parts) parts.push({ ...part, start: start + within })
		}
		const stretches = splitDefinitions(tokens, text.length)
		const firstStart = stretches[0]?.start ?? text.length
		const lead = this.unreadable(errors, unclosed, 0, firstStart)
		if (lead.length > 0) parts.push({ text: text.slice(0, firstStart), definition: undefined, faults: lead, start: 0 })
		for (const stretch of stretches) {
			const key = text.slice(stretch.start, stretch.end)
			const before = known.get(key)?.shift()
			if (before) {
				this.counters.definitionsKept += before.parts.length
				keep(key, stretch.start, before)
				continue
			}
			const read = this.parser.parse(stretch, text).map(parsed => {
				this.counters.definitionsRead++
				const from = stretch.start + parsed.start
				const faults = this.unreadable(errors, unclosed, from, stretch.start + parsed.end)
				return { part: { text: key.slice(parsed.start, parsed.end), ...readDefinition(parsed, faults) }, start: parsed.start }
			})
			keep(key, stretch.start, { parts: read })
		}
		const file: TextFile = { uri, text, parts }
		this.stretches.set(file, kept)
		return file
	}

	private unreadable(errors: readonly ILexingError[], unclosed: readonly IToken[], from: number, to: number): Fault[] {
		const within = (offset: number) => offset >= from && offset < to
		const characters = errors.filter(error => within(error.offset))
		const faults = characters.slice(0, mostUnreadable).map(({ offset, length, message }) => {
			const found = /^unexpected character: ->(.)/su.exec(message)?.[1] ?? ''
			return meansNothing(found, { start: offset - from, end: offset - from + length })
		})
		for (const token of unclosed.filter(one => within(one.startOffset))) {
			const { start, end } = spanOf(token)
			const span = { start: start - from, end: end - from }
			const message = 'This comment has no end. Close it with */ or begin the line with //.'
			const edits = [{ span: { start: span.start, end: span.start + 2 }, text: '//' }]
			faults.push({ code: 'syntax', span, message, corrections: [{ title: 'Make it a comment of one line', edits }] })
		}
		return faults
	}
}
