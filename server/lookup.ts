import type { Position } from 'vscode-languageserver'
import { mondayOf } from '../language/compute/calendar.ts'
import { schedulePlan } from '../language/compute/schedule.ts'
import type { Block, Definition, Log, LogEntry, Plan, Session } from '../language/model/definitions.ts'
import type { Reference } from '../language/model/reading.ts'
import type { Name, Span } from '../language/model/text.ts'
import { means, meantBy } from '../language/names/meant.ts'
import type { Folder } from '../language/workspace/folder.ts'
import type { TextFile } from '../language/workspace/text-file.ts'
import { offsetOf } from './positions.ts'
import type { Workspace } from './workspace.ts'

/** What stands at a place of a text. */
export interface Found {
	readonly folder: Folder
	readonly file: TextFile
	readonly definition: Definition
	/** Where the definition begins in its file. */
	readonly start: number
	/** The place, counted from the beginning of the definition. */
	readonly offset: number
}

/** The definition at a position, with all open changes taken in. */
export function definitionAt(workspace: Workspace, uri: string, position: Position): Found | undefined {
	workspace.settle()
	const file = workspace.fileOf(uri)
	if (!file) return undefined
	const at = offsetOf(file, position)
	const part = file.parts.findLast(one => one.start <= at)
	if (!part?.definition) return undefined
	return { folder: workspace.folderOf(uri), file, definition: part.definition, start: part.start, offset: at - part.start }
}

export function holds(span: Span, offset: number): boolean {
	return span.start <= offset && offset <= span.end
}

/** What a name stands for: a definition, or a session in a block. */
export type Target =
	| { readonly kind: 'definition'; readonly definition: Definition }
	| { readonly kind: 'session'; readonly definition: Block; readonly session: Session }

/** A name at a place of a text, and what it stands for. */
export interface Named {
	readonly target: Target
	readonly name: Span
}

/** A name as it stands in a definition's text. */
export interface NamedPlace {
	readonly definition: Definition
	readonly name: Name
}

/** What the name at the place stands for: its own definition, or the one that it refers to. */
export function namedAt(found: Found): Named | undefined {
	const { definition, offset, folder } = found
	const reference = definition.references.find(one => holds(one.span, offset))
	if (reference) return definitionNamed(reference, folder)
	if (holds(definition.name.span, offset)) return { target: { kind: 'definition', definition }, name: definition.name.span }
	const use = sessionNames(definition, folder).find(one => holds(one.name.span, offset))
	return use?.meant && { target: { kind: 'session', ...use.meant }, name: use.name.span }
}

function definitionNamed(reference: Reference, folder: Folder): Named | undefined {
	const definition = meantBy(reference, folder)
	return definition && { target: { kind: 'definition', definition }, name: reference.span }
}

/** The name that a target gives itself. */
export function ownName(target: Target): Name {
	return target.kind === 'session' ? target.session.name : target.definition.name
}

/** What people call a definition: its title, else its name. */
export function titleOf(definition: Definition): string {
	return definition.title?.text ?? definition.name.text
}

/** Every place in a folder that names a target, its own name first. */
export function placesNaming(folder: Folder, target: Target): NamedPlace[] {
	return target.kind === 'session' ? placesNamingSession(folder, target) : placesNamingDefinition(folder, target.definition)
}

function placesNamingDefinition(folder: Folder, target: Definition): NamedPlace[] {
	const own = [...folder.namesakes(target.kind, target.name.text)].map(definition => ({ definition, name: definition.name }))
	const others = definitionsOf(folder).flatMap(definition =>
		definition.references
			.filter(reference => means(reference, target, folder))
			.map(reference => ({ definition, name: { text: reference.name, span: reference.span } })),
	)
	return [...own, ...others]
}

function placesNamingSession(folder: Folder, { definition: block, session }: Target & { kind: 'session' }): NamedPlace[] {
	const uses = definitionsOf(folder).flatMap(definition =>
		sessionNames(definition, folder)
			.filter(({ meant }) => meant?.definition === block && meant.session.name.text === session.name.text)
			.map(({ name }) => ({ definition, name })),
	)
	const isOwn = (use: NamedPlace) => use.name === session.name
	return [...uses.filter(isOwn), ...uses.filter(use => !isOwn(use))]
}

function definitionsOf(folder: Folder): Definition[] {
	return folder.fileUris().flatMap(uri => (folder.file(uri)?.parts ?? []).flatMap(part => part.definition ?? []))
}

/** A session's name where it is given or used, and the session that is meant, if one is. */
interface SessionName {
	readonly name: Name
	readonly meant: { readonly definition: Block; readonly session: Session } | undefined
}

/** The names of sessions in a definition: those that a block gives, those that a plan or a log uses. */
function sessionNames(definition: Definition, folder: Folder): SessionName[] {
	switch (definition.kind) {
		case 'block':
			return [
				...definition.sessions.map(session => ({ name: session.name, meant: { definition, session } })),
				...definition.turns.flatMap(turn => turn.sessions.map(name => ({ name, meant: sessionIn(definition, name) }))),
			]
		case 'plan':
			return sessionNamesOfPlan(definition, folder)
		case 'log':
			return definition.entries.flatMap(entry => sessionNameOfEntry(entry, definition, folder))
		default:
			return []
	}
}

function sessionNamesOfPlan(plan: Plan, folder: Folder): SessionName[] {
	const ofRuns = plan.runs.flatMap(run => {
		const block = folder.find('block', run.block.text)
		const changes = [...run.changes, ...run.members.flatMap(member => member.changes)]
		return changes.flatMap(change =>
			'session' in change ? [{ name: change.session, meant: sessionIn(block, change.session) }] : [],
		)
	})
	const blocks = plan.runs.map(run => folder.find('block', run.block.text))
	const ofDays = [...plan.moves, ...plan.members.flatMap(member => member.moves)].map(({ session }) => ({
		name: session,
		meant: firstSession(blocks, session),
	}))
	return [...ofRuns, ...ofDays]
}

/** The session that is planned under that name in the week of the entry, else the first under that name that the lifter's plans run. */
function sessionNameOfEntry({ session: name, on }: LogEntry, log: Log, folder: Folder): SessionName[] {
	if (!name) return []
	const plans = folder.plansOf(log.name.text)
	const planned = plans
		.flatMap(plan => schedulePlan(plan, folder).sessions)
		.find(one => on !== undefined && one.session.name.text === name.text && mondayOf(one.date) === mondayOf(on))
	const blocks = planned ? [planned.run.block] : plans.flatMap(plan => plan.runs.map(run => folder.find('block', run.block.text)))
	return [{ name, meant: firstSession(blocks, name) }]
}

function firstSession(blocks: readonly (Block | undefined)[], name: Name): SessionName['meant'] {
	return blocks.map(block => sessionIn(block, name)).find(one => one !== undefined)
}

function sessionIn(block: Block | undefined, name: Name): SessionName['meant'] {
	const session = block?.sessions.find(one => one.name.text === name.text)
	return block && session && { definition: block, session }
}
