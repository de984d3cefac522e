import { type Signal, signal } from '@preact/signals-core'
import type { Block, Definition, Plan } from '../language/model/definitions.ts'
import type { ListedPlan, Picked } from '../language/reports/chosen-plan.ts'
import type { Folder } from '../language/workspace/folder.ts'
import { titleOf } from './lookup.ts'
import type { Workspace } from './workspace.ts'

/** Which plan's loads show in an editor: what the coach has picked in each folder, and what is shown where that says nothing. */
export class ChosenPlans {
	private readonly picked: Signal<ReadonlyMap<string, Picked>> = signal(new Map())

	constructor(private readonly workspace: Workspace) {}

	/** @param uri A file of the folder that is meant; without it, the first folder. */
	pick(uri: string | undefined, choice: Picked | undefined): void {
		const picked = new Map(this.picked.value)
		const root = this.rootUri(uri)
		if (choice) picked.set(root, choice)
		else picked.delete(root)
		this.picked.value = picked
	}

	/** Another object after each choice: whoever has read it is told. */
	get changes(): unknown {
		return this.picked.value
	}

	pickedIn(uri: string | undefined): Picked | undefined {
		return this.picked.value.get(this.rootUri(uri))
	}

	/** The plan whose loads show in a block: the picked one where it runs the block, else the one on show, else the first that does. */
	planFor(block: Block, uri: string, folder: Folder, shown?: string): Plan | undefined {
		const running = plansRunning(block, folder)
		return (
			running.find(plan => isPicked(plan, this.pickedIn(uri))) ?? running.find(plan => plan.name.text === shown) ?? running[0]
		)
	}

	/** Of the plans that one text makes, the picked one, else the first. */
	amongMembers(plans: readonly Plan[], uri: string): Plan | undefined {
		return plans.find(plan => isPicked(plan, this.pickedIn(uri))) ?? plans[0]
	}

	/** The plan that a file is about: its own, that of its lifter, or one that runs its block; else any. Of several the picked one, then the one on show. */
	planNear(uri: string | undefined, folder: Folder, shown?: string): Plan | undefined {
		const picked = this.pickedIn(uri)
		const plans = plansIn(folder)
		const pick = (fits: (plan: Plan) => boolean) => {
			const fitting = plans.filter(fits)
			return fitting.find(plan => isPicked(plan, picked)) ?? fitting.find(plan => plan.name.text === shown) ?? fitting[0]
		}
		const definitions = definitionsIn(uri, folder)
		const names = (kind: string) => new Set(definitions.filter(one => one.kind === kind).map(one => one.name.text))
		const [own, lifters, logs, blocks] = [names('plan'), names('lifter'), names('log'), names('block')]
		if (blocks.size > 0 && own.size + lifters.size === 0) return pick(plan => plan.runs.some(run => blocks.has(run.block.text)))
		return (
			pick(plan => own.has((plan.teamPlan ?? plan).name.text)) ??
			pick(plan => lifters.has(plan.lifter.text) || logs.has(plan.lifter.text)) ??
			pick(() => true)
		)
	}

	private rootUri(uri: string | undefined): string {
		return uri === undefined ? (this.workspace.firstRootUri() ?? '') : this.workspace.rootUriOf(uri)
	}
}

export function isPicked(plan: Plan, picked: Picked | undefined): boolean {
	if (picked === undefined) return false
	return 'plan' in picked ? plan.name.text === picked.plan : plan.lifter.text === picked.lifter
}

/** Every plan of a folder that has a name. */
export function plansIn(folder: Folder): readonly Plan[] {
	return folder.all('plan').filter(plan => plan.name.text !== '')
}

export function plansRunning(block: Definition, folder: Folder): readonly Plan[] {
	return plansIn(folder).filter(plan => plan.runs.some(run => run.block.text === block.name.text))
}

export function listedPlan(plan: Plan, folder: Folder): ListedPlan {
	const lifter = folder.find('lifter', plan.lifter.text)
	return {
		name: plan.name.text,
		title: titleOf(plan),
		lifter: plan.lifter.text,
		lifterTitle: lifter ? titleOf(lifter) : plan.lifter.text,
	}
}

export function definitionsIn(uri: string | undefined, folder: Folder): readonly Definition[] {
	return uri === undefined ? [] : (folder.file(uri)?.parts ?? []).flatMap(part => part.definition ?? [])
}
