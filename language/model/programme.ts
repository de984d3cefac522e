import type { Definition, DefinitionKind, DefinitionOf, Limits, Log, Plan, Team } from './definitions.ts'
import type { CalendarDate } from './quantities.ts'

/**
 * Everything that one workspace folder and the built-in library define, looked up by name. What is read through it is recorded, so that
 * a result is computed again only when something it read has changed.
 */
export interface Programme {
	/**
	 * The definition that a name stands for: the workspace's, else the library's. The first of two with one name. `winter/per-holst` is a
	 * member's plan; `winter` is the team's, as it is written.
	 */
	find<K extends DefinitionKind>(kind: K, name: string): DefinitionOf<K> | undefined
	/**
	 * All that a kind has, workspace and library, in a fixed order; a replaced built-in one is left out. In place of a team's plan stand
	 * those of its members.
	 */
	all<K extends DefinitionKind>(kind: K): readonly DefinitionOf<K>[]
	/** Every definition of that kind and name in the workspace, for what must be there once. */
	namesakes(kind: DefinitionKind, name: string): readonly Definition[]
	/** The plans of single lifters that a plan as it is written makes: itself, or one for each member of its team. */
	plansIn(plan: Plan): readonly Plan[]
	/** A lifter's plans, those that a team's plan makes for its members among them. */
	plansOf(lifter: string): readonly Plan[]
	logsOf(lifter: string): readonly Log[]
	teamsOf(lifter: string): readonly Team[]
	/** `limits` definitions in the order in which they win: workspace, then built-in. */
	limits(): readonly Limits[]
	/** The workspace's definitions in whose text that name stands for one of that kind, in a fixed order. */
	referrersOf(kind: DefinitionKind, name: string): readonly Definition[]
	/** What the library gives by that name, whatever stands in its place in the workspace. */
	builtIn<K extends DefinitionKind>(kind: K, name: string): DefinitionOf<K> | undefined
	/** The date of today, where somebody has said it: for rules about logs. Nothing here reads a clock. */
	today(): CalendarDate | undefined
	/** Is it from the built-in library? */
	isBuiltIn(definition: Definition): boolean
	/**
	 * Tells how often each code would be reported on a definition, and on the plans that it concerns, if it read otherwise: so that a
	 * correction breaks nothing else. Hints do not count. What is handed back is for a few trials at once, before anything changes.
	 * `undefined` where this is such a trial itself.
	 */
	trialsOf<D extends Definition>(definition: D): ((changed: D) => ReadonlyMap<string, number>) | undefined
	/**
	 * A value worked out from a definition, kept until something that it read changes. `compute` must be a function declared once: it is
	 * the key.
	 */
	derived<D extends Definition, T>(definition: D, compute: (definition: D, programme: Programme) => T): T
}
