import type { DefinitionKind } from '../../language/model/definitions.ts'

/** The protocol's own types, so that every theme has a colour for each. */
export const tokenTypes = [
	'keyword',
	'number',
	'string',
	'comment',
	'operator',
	'enumMember',
	'function',
	'event',
	'enum',
	'macro',
	'namespace',
	'variable',
	'class',
	'interface',
	'struct',
	'method',
	'decorator',
] as const
export type TokenType = (typeof tokenTypes)[number]

/** Two of the protocol's, and three of ours that a theme may tell apart: what a number counts in, a calendar date, the role of an item. */
export const tokenModifiers = ['declaration', 'defaultLibrary', 'unit', 'date', 'role'] as const
export type TokenModifier = (typeof tokenModifiers)[number]

/** Names by what they name; as in the outline, the protocol has no kinds for training. */
export const typeOfKind: Readonly<Record<DefinitionKind, TokenType>> = {
	movement: 'function',
	breakdown: 'event',
	progression: 'enum',
	limits: 'macro',
	gym: 'namespace',
	lifter: 'variable',
	block: 'class',
	plan: 'interface',
	log: 'variable',
	team: 'struct',
	rules: 'macro',
}
