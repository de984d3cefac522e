import { type InlayHint, MarkupKind } from 'vscode-languageserver'
import { schedulePlan } from '../../language/compute/schedule.ts'
import type { Block, Plan } from '../../language/model/definitions.ts'
import { loadNotes } from '../../language/reports/load-notes.ts'
import { sessionTotals } from '../../language/reports/session-totals.ts'
import type { Folder } from '../../language/workspace/folder.ts'
import type { PlacedPart, TextFile } from '../../language/workspace/text-file.ts'
import { listedPlan } from '../chosen-plans.ts'
import type { Feature, ServerContext } from '../feature.ts'
import { escaped } from '../markdown.ts'
import { offsetOf, rangeOf } from '../positions.ts'
import { groupsIn } from '../prescriptions.ts'
import { StaleAnswers } from '../stale-answers.ts'
import { normalUri } from '../uri.ts'

/** Beside a percent the load in kg or lb for the lifter that is shown, at a session what it adds to its week. */
export const inlayHints: Feature = {
	capabilities: { inlayHintProvider: true },
	register(context) {
		const { connection, workspace, client, settings, chosen } = context
		const hintsIn = (uri: string) => {
			workspace.settle()
			const file = workspace.fileOf(uri)
			return file ? file.parts.flatMap(part => hintsOf(file, part, context)) : []
		}
		const stale = client.workspace?.inlayHint?.refreshSupport
			? new StaleAnswers(
					workspace,
					uri => hintsIn(uri),
					() => connection.languages.inlayHint.refresh(),
					() => [settings.wishes, chosen.changes],
				)
			: undefined
		connection.languages.inlayHint.on(({ textDocument, range }) => {
			const uri = normalUri(textDocument.uri)
			const hints = hintsIn(uri)
			stale?.keep(uri, hints)
			const file = workspace.fileOf(uri)
			if (!file) return null
			const [from, to] = [offsetOf(file, range.start), offsetOf(file, range.end)]
			return hints.filter(({ position }) => {
				const at = offsetOf(file, position)
				return from <= at && at <= to
			})
		})
	},
}

function hintsOf(file: TextFile, { definition, start }: PlacedPart, { workspace, chosen, settings }: ServerContext): InlayHint[] {
	const folder = workspace.folderOf(file.uri)
	const { loadHints, totalHints } = settings.wishes
	const hint = (offset: number, label: string, about: string, lines: readonly string[]): InlayHint => ({
		position: rangeOf(file, start + offset, start + offset).start,
		label,
		paddingLeft: true,
		tooltip: { kind: MarkupKind.Markdown, value: [`**${escaped(about)}**`, ...lines.map(escaped)].join('  \n') },
	})
	if (definition?.kind !== 'block' && definition?.kind !== 'plan') return []
	const plan =
		definition.kind === 'plan'
			? chosen.amongMembers(folder.plansIn(definition), file.uri)
			: chosen.planFor(definition, file.uri, folder)
	return [
		...(loadHints && plan ? loadHintsOf(definition, plan, folder, hint) : []),
		...(totalHints && definition.kind === 'block' ? totalHintsOf(definition, plan, folder, hint) : []),
	]
}

type MakeHint = (offset: number, label: string, about: string, lines: readonly string[]) => InlayHint

function loadHintsOf(definition: Block | Plan, plan: Plan, folder: Folder, hint: MakeHint): InlayHint[] {
	const notes = loadNotes(schedulePlan(plan, folder))
	const about = `${listedPlan(plan, folder).lifterTitle} (${plan.name.text})`
	return groupsIn(definition).flatMap(group => {
		const note = notes.get(group)
		const clause = group.ramp ?? group.load
		return note && clause ? [hint(clause.span.end, note.text, about, note.lines)] : []
	})
}

function totalHintsOf(block: Block, plan: Plan | undefined, folder: Folder, hint: MakeHint): InlayHint[] {
	const totals = sessionTotals(block, plan, folder)
	const whose = plan ? ` for ${listedPlan(plan, folder).lifterTitle}` : ''
	return block.sessions.flatMap(session => {
		const total = totals.get(session.name.text)
		return total ? [hint(session.header.end, total.text, `Hard sets, and minutes by estimate${whose}`, total.lines)] : []
	})
}
