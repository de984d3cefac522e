import type { Definition, DefinitionKind, DefinitionOf, Limits, Log, Plan, Team } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { CalendarDate } from '../model/quantities.ts'
import { problemsOf } from './problems.ts'

/** What was worked out, by definition and computation. */
type Results = Map<Definition, Map<unknown, unknown>>

/** A programme in which one definition reads otherwise. It keeps nothing beyond itself, but for what that definition has no part in. */
class WhatIf implements Programme {
	private readonly kept: Results = new Map()
	/** Has what is worked out at the moment met the changed definition? */
	private isTouched = false

	constructor(
		private readonly programme: Programme,
		private readonly definition: Definition,
		private readonly changed: Definition,
		private readonly shared: Results,
	) {}

	private now<D extends Definition | undefined>(one: D): D {
		if (one !== this.definition) return one
		this.isTouched = true
		return this.changed as D
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

	trialsOf(): undefined {
		return undefined
	}

	derived<D extends Definition, T>(definition: D, compute: (definition: D, programme: Programme) => T): T {
		const ofAll = resultsOf(definition, this.shared)
		if (ofAll.has(compute)) return ofAll.get(compute) as T
		const own = resultsOf(definition, this.kept)
		if (own.has(compute)) {
			this.isTouched = true
			return own.get(compute) as T
		}
		const wasTouched = this.isTouched
		this.isTouched = definition === this.changed
		const result = compute(definition, this)
		const results = this.isTouched ? own : ofAll
		results.set(compute, result)
		this.isTouched ||= wasTouched
		return result
	}
}

function resultsOf(definition: Definition, results: Results): Map<unknown, unknown> {
	const known = results.get(definition) ?? new Map<unknown, unknown>()
	results.set(definition, known)
	return known
}

/**
 * Tells how often each code would be reported, hints apart, if a definition read otherwise: on it and on the plans that it concerns. What
 * the definition has no part in is worked out in the first trial, and shared by those that follow.
 */
export function trialsOf<D extends Definition>(definition: D, programme: Programme): (changed: D) => ReadonlyMap<string, number> {
	const shared: Results = new Map()
	return changed =>
		// What is written is what the programme itself knows.
		changed === definition ? reports(definition, programme) : reports(changed, new WhatIf(programme, definition, changed, shared))
}

function reports(definition: Definition, programme: Programme): ReadonlyMap<string, number> {
	const counts = new Map<string, number>()
	for (const one of new Set([definition, ...concerned(definition, programme)])) {
		for (const { code, level } of problemsOf(one, programme)) {
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
