import type { Definition, DefinitionKind } from './definitions.ts'
import type { Span } from './text.ts'

/** The codes of faults that show in one definition's text alone, before any name is looked up. */
export type FaultCode = 'syntax' | 'bad-number' | 'bad-date' | 'stated-twice' | 'unknown-name' | 'old-spelling'

/** A replacement of one stretch of text. */
export interface TextEdit {
	readonly span: Span
	readonly text: string
	/** In a team's plan: what comes in place of it where the edit is for all members, and not for one. */
	readonly forAll?: TextEdit
}

/** A correction that can be made with one click: what it does, in a coach's words, and the edits. */
export interface Correction {
	readonly title: string
	readonly edits: readonly TextEdit[]
	/** What the words say is another thing then, so that it is the coach's to decide: never made without a question. */
	readonly isChoice?: boolean
}

export interface Fault {
	readonly code: FaultCode
	readonly span: Span
	readonly message: string
	readonly corrections: readonly Correction[]
}

/** A name that another definition gives. */
export interface Reference {
	readonly kind: DefinitionKind
	/** A second kind that may stand there too: a plan is for a lifter or for a team. */
	readonly orKind?: DefinitionKind
	readonly name: string
	readonly span: Span
	/** `run` lines name blocks, `drop` names a movement of the block … : the words before the name, for messages. */
	readonly role?: string
}

/** One stretch of a text: a definition, or what none could be made of. */
export interface Part {
	readonly text: string
	readonly definition: Definition | undefined
	readonly faults: readonly Fault[]
}
