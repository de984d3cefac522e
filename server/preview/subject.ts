import type { Block, Definition, DefinitionOf, Plan } from '../../language/model/definitions.ts'
import type { Position, PreviewChoice, PreviewQuestion, Subject } from '../../language/reports/preview.ts'
import type { Folder } from '../../language/workspace/folder.ts'
import { type ChosenPlans, isPicked, listedPlan, plansIn } from '../chosen-plans.ts'
import { definitionAt, holds, titleOf } from '../lookup.ts'
import { offsetOf } from '../positions.ts'
import type { Workspace } from '../workspace.ts'

/** What a preview is about, found in its folder. A log stands for all logs of its lifter. */
export type Found = { readonly folder: Folder } & (
	| { readonly plan: Plan }
	| { readonly block: Block }
	| { readonly team: DefinitionOf<'team'> }
	| { readonly log: DefinitionOf<'log'> }
)

/** The folder that a question is about: the one that holds the file, unless what is held stands in another. */
export function folderFor({ uri, held }: PreviewQuestion, workspace: Workspace): Folder | undefined {
	const folders = workspace.readyFolders().map(one => one.folder)
	const holding = held && folders.find(folder => folder.find(held.kind, held.name) !== undefined)
	if (uri === undefined) return holding ?? folders[0]
	const own = workspace.folderOf(uri)
	return held === undefined || own.find(held.kind, held.name) !== undefined ? own : (holding ?? own)
}

/**
 * What to show: what is held; else what the cursor is in. A block is shown with the loads of a plan that runs it, by preference the
 * chosen one, for that is what its lifters will lift; one that no plan runs is shown in percents.
 */
export function findSubject(
	question: PreviewQuestion,
	folder: Folder,
	workspace: Workspace,
	chosen: ChosenPlans,
): Found | undefined {
	const held = question.held && named(question.held, folder)
	return held ?? atCursor(question, folder, workspace, chosen) ?? nearFile(question, folder, chosen)
}

function shownPlan(shown: Subject | undefined): string | undefined {
	return shown?.kind === 'plan' ? shown.name : undefined
}

/** Is what was on show gone, while something in the file cannot be read? Then it is likely to come back with the next keys. */
export function isBrokenAway({ held, shown, uri }: PreviewQuestion, folder: Folder): boolean {
	const wanted = held ?? shown
	if (wanted === undefined || named(wanted, folder) !== undefined) return false
	const parts = uri === undefined ? [] : (folder.file(uri)?.parts ?? [])
	return parts.some(part => part.faults.some(fault => fault.code === 'syntax'))
}

function named({ kind, name }: Subject, folder: Folder): Found | undefined {
	const definition = folder.find(kind, name)
	return definition && found(definition, folder)
}

function found(definition: Definition, folder: Folder): Found | undefined {
	switch (definition.kind) {
		case 'plan':
			return { folder, plan: definition }
		case 'block':
			return { folder, block: definition }
		case 'team':
			return { folder, team: definition }
		case 'log':
			return { folder, log: definition }
		default:
			return undefined
	}
}

function atCursor(
	{ uri, at, shown }: PreviewQuestion,
	folder: Folder,
	workspace: Workspace,
	chosen: ChosenPlans,
): Found | undefined {
	const place = uri !== undefined && at ? (definitionAt(workspace, uri, at) ?? firstBelow(workspace, uri, at)) : undefined
	if (uri === undefined || place === undefined || place.definition.name.text === '') return undefined
	const { definition, offset } = place
	if (definition.kind === 'block') {
		const plan = chosen.planFor(definition, uri, folder, shownPlan(shown))
		return plan ? { folder, plan } : { folder, block: definition }
	}
	if (definition.kind === 'lifter') {
		const own = folder.plansOf(definition.name.text)
		const plan =
			own.find(one => isPicked(one, chosen.pickedIn(uri))) ?? own.find(one => one.name.text === shownPlan(shown)) ?? own[0]
		return plan && { folder, plan }
	}
	if (definition.kind === 'plan') {
		// A team's plan is shown as its members have it: the one whose lines the cursor is in, else the one on show.
		const ofMembers = folder.all('plan').filter(plan => plan.teamPlan === definition)
		const member = definition.members.find(({ span }) => holds(span, offset))?.member.text
		const plan =
			ofMembers.find(one => one.lifter.text === member) ??
			ofMembers.find(one => one.name.text === shownPlan(shown)) ??
			chosen.amongMembers(ofMembers, uri)
		return { folder, plan: plan ?? definition }
	}
	return found(definition, folder)
}

/** The words at the top of a file are about what stands below them. */
function firstBelow(workspace: Workspace, uri: string, at: Position): { definition: Definition; offset: number } | undefined {
	const file = workspace.fileOf(uri)
	const [first] = file?.parts ?? []
	if (!file || !first?.definition || first.start < offsetOf(file, at)) return undefined
	return { definition: first.definition, offset: 0 }
}

function nearFile({ uri, shown }: PreviewQuestion, folder: Folder, chosen: ChosenPlans): Found | undefined {
	const plan = chosen.planNear(uri, folder, shownPlan(shown))
	if (plan) return { folder, plan }
	// No plan runs it yet.
	const definitions = uri === undefined ? [] : (folder.file(uri)?.parts ?? []).flatMap(part => part.definition ?? [])
	const block = definitions.find(one => one.kind === 'block')
	return block && { folder, block }
}

export function subjectOf(one: Found): Subject {
	if ('plan' in one) return { kind: 'plan', name: one.plan.name.text }
	if ('block' in one) return { kind: 'block', name: one.block.name.text }
	if ('team' in one) return { kind: 'team', name: one.team.name.text }
	return { kind: 'log', name: one.log.name.text }
}

/** Everything of a folder that can be shown: plans, blocks, teams, logs. */
export function choicesIn(folder: Folder): PreviewChoice[] {
	const lifterTitle = (name: string) => folder.find('lifter', name)?.title?.text ?? name
	const plans = plansIn(folder).map((plan): PreviewChoice => {
		const { name, title, lifterTitle: of } = listedPlan(plan, folder)
		return { kind: 'plan', name, title, lifterTitle: of }
	})
	const others = (['block', 'team'] as const).flatMap(kind =>
		folder
			.all(kind)
			.filter(({ name }) => name.text !== '')
			.map((one): PreviewChoice => ({ kind, name: one.name.text, title: titleOf(one), lifterTitle: null })),
	)
	const lifters = new Set(folder.all('log').flatMap(({ name }) => name.text || []))
	const logs = [...lifters].map((name): PreviewChoice => ({ kind: 'log', name, title: lifterTitle(name), lifterTitle: null }))
	return [...plans, ...others, ...logs]
}
