import type { Plan, Run, RunChange } from '../../model/definitions.ts'

/** The plan with more lines below one of its runs: for a trial of what a correction would do. */
export function withRunChanges(plan: Plan, run: Run, changes: readonly RunChange[]): Plan {
	return { ...plan, runs: plan.runs.map(one => (one === run ? { ...one, changes: [...one.changes, ...changes] } : one)) }
}

/** Is nothing reported more often than before, and, where a code is given, that code less often? */
export function isNoWorse(before: ReadonlyMap<string, number>, after: ReadonlyMap<string, number>, better?: string): boolean {
	const count = (of: ReadonlyMap<string, number>, code: string) => of.get(code) ?? 0
	if (better !== undefined && count(after, better) >= count(before, better)) return false
	return [...after.keys()].every(code => count(after, code) <= count(before, code))
}
