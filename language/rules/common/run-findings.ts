import type { Lifter, Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'

/** A finding that belongs on a line of one of a lifter's plans. */
export interface PlanFinding {
	readonly plan: Plan
	readonly finding: Finding
}

/**
 * The part of what is found over all plans of a lifter that one plan shows. `ofLifter` must be a function declared once: it is worked
 * out once for all the plans. Silent where nobody knows the lifter.
 */
export function findingsOn(
	plan: Plan,
	programme: Programme,
	ofLifter: (lifter: Lifter, programme: Programme) => readonly PlanFinding[],
): Finding[] {
	const lifter = programme.find('lifter', plan.lifter.text)
	if (lifter === undefined) return []
	return programme
		.derived(lifter, ofLifter)
		.filter(one => one.plan === plan)
		.map(one => one.finding)
}
