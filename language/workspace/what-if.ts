import type { Definition, DefinitionKind, DefinitionOf, Limits, Log, Plan, Team } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { CalendarDate } from '../model/quantities.ts'
import { problemsOf } from './problems.ts'

/** A programme in which one definition reads otherwise. It keeps nothing beyond itself. */
class WhatIf implements Programme {
	private readonly kept = new Map<Definition, Map<unknown, unknown>>()

	constructor(
		private readonly programme: Programme,
		private readonly definition: Definition,
		private readonly changed: Definition,
	) {}

	private now<D extends Definition | undefined>(one: D): D {
		return one === this.definition ? (this.changed as D) : one
	}

	find<K extends DefinitionKind>(kind: K, name: string): DefinitionOf<K> | undefined {
		return this.now(this.programme.find(kind, name))
	}

	all<K extends DefinitionKind>(kind: K): readonly DefinitionOf<K>[] {
		return this.programme.all(kind).map(one => this.now(one))
	}

	namesakes(kind: DefinitionKind, name: string): readonly Definition[] {
		return this.programme.namesakes(kind, name).map(one => this.now(one))
	}

	referrersOf(kind: DefinitionKind, name: string): readonly Definition[] {
		return this.programme.referrersOf(kind, name).map(one => this.now(one))
	}

	builtIn<K extends DefinitionKind>(kind: K, name: string): DefinitionOf<K> | undefined {
		return this.programme.builtIn(kind, name)
	}

	plansIn(plan: Plan): readonly Plan[] {
		return this.programme.plansIn(plan).map(one => this.now(one))
	}

	plansOf(lifter: string): readonly Plan[] {
		return this.programme.plansOf(lifter).map(one => this.now(one))
	}

	logsOf(lifter: string): readonly Log[] {
		return this.programme.logsOf(lifter).map(one => this.now(one))
	}

	teamsOf(lifter: string): readonly Team[] {
		return this.programme.teamsOf(lifter).map(one => this.now(one))
	}

	limits(): readonly Limits[] {
		return this.programme.limits().map(one => this.now(one))
	}

	today(): CalendarDate | undefined {
		return this.programme.today()
	}

	isBuiltIn(definition: Definition): boolean {
		return this.programme.isBuiltIn(definition)
	}

	reportsIf(): undefined {
		return undefined
	}

	derived<D extends Definition, T>(definition: D, compute: (definition: D, programme: Programme) => T): T {
		const results = this.kept.get(definition) ?? new Map<unknown, unknown>()
		this.kept.set(definition, results)
		if (!results.has(compute)) results.set(compute, compute(definition, this))
		return results.get(compute) as T
	}
}

/** How often each code would be reported, hints apart, if a definition read otherwise: on it and on the plans that it concerns. */
export function reportsIf(definition: Definition, changed: Definition, programme: Programme): ReadonlyMap<string, number> {
	const trial = new WhatIf(programme, definition, changed)
	const counts = new Map<string, number>()
	for (const one of new Set([changed, ...concerned(changed, trial)])) {
		for (const { code, level } of problemsOf(one, trial)) {
			if (level !== 'hint') counts.set(code, (counts.get(code) ?? 0) + 1)
		}
	}
	return counts
}

/** All plans of the lifter of a plan; the plans that run a block. */
function concerned(definition: Definition, programme: Programme): readonly Definition[] {
	if (definition.kind === 'plan') return programme.plansOf(definition.lifter.text)
	return definition.kind === 'block'
		? programme.referrersOf('block', definition.name.text).flatMap(one => (one.kind === 'plan' ? programme.plansIn(one) : []))
		: []
}
