import type { Definition, DefinitionKind, DefinitionOf } from '../model/definitions.ts'
import type { Finding } from '../model/problem.ts'
import type { Programme } from '../model/programme.ts'
import type { Level } from '../model/vocabulary.ts'

/** The parts of the work that rules look at: one folder each. */
export type RuleArea = 'reading' | 'shape' | 'dose' | 'breakdowns' | 'gates' | 'loads' | 'calendar' | 'logs'

/** What people see of an area, where rules are listed. */
export const areaTitles: Readonly<Record<RuleArea, string>> = {
	reading: 'Reading the text',
	shape: 'The shape of a block',
	dose: 'Dose',
	breakdowns: 'Breakdowns',
	gates: 'Gates and progressions',
	loads: 'Loads',
	calendar: 'Calendar',
	logs: 'Logs',
}

export type CheckByKind = {
	readonly [K in DefinitionKind]?: (definition: DefinitionOf<K>, programme: Programme) => Iterable<Finding>
}

/**
 * One diagnostic code. Everything that a person can ask about it stands here or on its page; settings, completion, `explain` and the index
 * of pages are made from it.
 */
export interface Rule {
	/** A plain kebab name. */
	readonly code: string
	readonly area: RuleArea
	/** Unless a `rules` definition says otherwise. */
	readonly level: Level
	/** One line: when it speaks. */
	readonly summary: string
	/** Where its limit or its reason comes from. */
	readonly source: string
	/** A safe fix changes nothing about the training; another one is the coach's to confirm. */
	readonly fix: 'none' | 'safe' | 'to confirm'
	/** The version that brought it. */
	readonly since: string
	/** The page: what, why, a wrong and a right example, how to fix it, when to allow it. */
	readonly page: string
	/** It cannot be lowered, turned off or allowed. */
	readonly always?: boolean
	/** `reading` rules report what was found while the text was read; they have no check of their own, or one beside it. */
	readonly check?: CheckByKind
	/** A check for definitions of every kind. */
	readonly checkAny?: (definition: Definition, programme: Programme) => Iterable<Finding>
}
