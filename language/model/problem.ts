import type { Definition } from './definitions.ts'
import type { Correction } from './reading.ts'
import type { Span } from './text.ts'
import type { Level } from './vocabulary.ts'

/** How a problem is shown; what is `off` is not shown. */
export type ShownLevel = Exclude<Level, 'off'>

/** A place in another definition that a message points to. */
export interface RelatedPlace {
	readonly definition: Definition
	readonly span: Span
	readonly message: string
}

/** What a rule found in a definition, before `rules` levels and `allow` lines are applied. */
export interface Finding {
	readonly span: Span
	/** One or two sentences in a coach's words: what is wrong, by how much, against which limit, from which source. */
	readonly message: string
	/** Where the limit comes from: a publication, "common practice", or the coach's own text. */
	readonly source?: string | undefined
	readonly related?: readonly RelatedPlace[]
	/** Those that take long to find are given as a function: they are looked for when somebody asks. */
	readonly corrections?: readonly Correction[] | (() => readonly Correction[])
	/** Only where one finding of a code is milder than the code's own level. */
	readonly level?: ShownLevel
}

/** A finding as it is shown; positions count from the beginning of its definition. */
export interface Problem {
	readonly code: string
	readonly level: ShownLevel
	readonly span: Span
	readonly message: string
	readonly source: string | undefined
	readonly related: readonly RelatedPlace[]
	readonly corrections: readonly Correction[]
}
