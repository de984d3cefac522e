import { type CodeAction, CodeActionKind } from 'vscode-languageserver'
import type { Definition } from '../../language/model/definitions.ts'
import { meantBy } from '../../language/names/meant.ts'
import { definitionsIn, isPicked, plansIn, plansRunning } from '../chosen-plans.ts'
import { workspaceEdit } from '../edits.ts'
import { titleOf } from '../lookup.ts'
import { rangeOf } from '../positions.ts'
import { toDiagnostics } from '../problems/to-diagnostics.ts'
import { definitionFor, isWritable, planFor } from '../writing/skeletons.ts'
import type { Request } from './request.ts'

/** Writes what a name asks for that nobody has defined: "Write lifter per-holst". */
export function missingDefinitions(request: Request): CodeAction[] {
	const { file, folder, from, to, problems, context } = request
	return file.parts.flatMap(({ definition, start }) =>
		(definition?.references ?? [])
			.filter(({ span }) => start + span.start <= to && from <= start + span.end)
			.filter(reference => !meantBy(reference, folder))
			.flatMap(({ kind, orKind, name, span }) => {
				const about = problems.filter(one => one.code === 'unknown-name' && one.start === start + span.start)
				return [kind, ...(orKind ? [orKind] : [])].filter(isWritable).map(
					(writable): CodeAction => ({
						title: `Write ${writable} ${name}`,
						kind: CodeActionKind.QuickFix,
						diagnostics: toDiagnostics(file, about, context.workspace),
						edit: appended(request, definitionFor(writable, name, folder)),
					}),
				)
			}),
	)
}

/** Writes a plan at a lifter who has none, and at a block that none runs. */
export function newPlans(request: Request): CodeAction[] {
	const { file, folder, from, to, context } = request
	const at = file.parts.find(
		({ definition, start }) => definition && start + definition.header.start <= to && from <= start + definition.header.end,
	)
	const definition: Definition | undefined = at?.definition
	if (definition?.kind === 'lifter' && definition.name.text !== '') {
		if (plansIn(folder).some(plan => plan.lifter.text === definition.name.text)) return []
		const blocks = folder.all('block')
		const block = definitionsIn(file.uri, folder).find(one => one.kind === 'block') ?? blocks[0]
		return [action(request, `Write a plan for ${titleOf(definition)}`, planFor(definition, block, folder))]
	}
	if (definition?.kind !== 'block' || definition.name.text === '' || plansRunning(definition, folder).length > 0) return []
	const picked = plansIn(folder).find(plan => isPicked(plan, context.chosen.pickedIn(file.uri)))
	const lifter = (picked && folder.find('lifter', picked.lifter.text)) ?? folder.all('lifter').find(one => one.name.text !== '')
	if (!lifter) return []
	const title = `Write a plan for ${titleOf(lifter)} that runs ${titleOf(definition)}`
	return [action(request, title, planFor(lifter, definition, folder))]
}

function action(request: Request, title: string, lines: readonly string[]): CodeAction {
	return { title, kind: CodeActionKind.Refactor, edit: appended(request, lines) }
}

/** Lines at the end of the text, with a blank line before them and the line breaks that the text has. */
function appended({ file, context: { workspace, client } }: Request, lines: readonly string[]) {
	const { text } = file
	const lineBreak = /\r\n/.test(text) ? '\r\n' : '\n'
	const before = text === '' ? '' : /\n[ \t]*\r?\n$/.test(text) ? '' : text.endsWith('\n') ? lineBreak : lineBreak + lineBreak
	const newText = `${before}${lines.join(lineBreak)}${lineBreak}`
	return workspaceEdit(new Map([[file.uri, [{ range: rangeOf(file, text.length, text.length), newText }]]]), workspace, client)
}
