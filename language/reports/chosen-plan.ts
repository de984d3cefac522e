import type { PlanChoice } from './preview.ts'

/**
 * Whose loads an editor shows beside a block: in hints behind a percent, under the pointer and in the preview. A coach picks a plan or a
 * lifter, for one workspace folder; where the picked one has nothing to do with a file, and where nothing is picked, the first plan that
 * the file is about is shown.
 *
 * An editor asks with the request `barstave/plans` (`PlansQuestion` → `PlansAnswer`), picks with the request `barstave/choosePlan`
 * (`PlanPick` → `PlansAnswer`), and asks again after the notification `barstave/plansChanged` (without parameters), which comes whenever
 * a plan, a lifter or the choice may have changed.
 */
export interface PlansQuestion {
	/** The file in front; without it, the first folder. */
	readonly uri?: string
}

/** A plan or a lifter, by name; a member of a team's plan has its own plan, such as `winter/per-holst`. */
export type Picked = { readonly plan: string } | { readonly lifter: string }

export interface PlanPick extends PlansQuestion {
	/** `null` takes the choice back. A name that nobody has is kept until somebody has it. */
	readonly picked: Picked | null
}

export interface PlansAnswer {
	/** Every plan of the file's folder. */
	readonly plans: readonly ListedPlan[]
	readonly picked: Picked | null
	/** Name of the plan whose loads show in this file; `null` where there is none. */
	readonly shown: string | null
}

export interface ListedPlan extends PlanChoice {
	/** The lifter's name, to pick by. */
	readonly lifter: string
}
