import type { Position } from 'vscode-languageserver'
import type { Definition } from '../language/model/definitions.ts'
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

/** The name of another definition at the place. */
function referenceAt({ definition, offset }: Found): Reference | undefined {
	return definition.references.find(reference => holds(reference.span, offset))
}

/** What the name at the place stands for: its own definition, or the one that it refers to. */
export function namedAt(found: Found): { target: Definition; name: Span } | undefined {
	const { definition, offset, folder } = found
	const reference = referenceAt(found)
	if (reference) {
		const target = meantBy(reference, folder)
		return target && { target, name: reference.span }
	}
	return holds(definition.name.span, offset) ? { target: definition, name: definition.name.span } : undefined
}

/** What people call a definition: its title, else its name. */
export function titleOf(definition: Definition): string {
	return definition.title?.text ?? definition.name.text
}

/** Every place in a folder that names a definition, its own name first. */
export function placesNaming(folder: Folder, target: Definition): { definition: Definition; name: Name }[] {
	const own = [...folder.namesakes(target.kind, target.name.text)].map(definition => ({ definition, name: definition.name }))
	const others = folder
		.fileUris()
		.flatMap(uri =>
			(folder.file(uri)?.parts ?? []).flatMap(({ definition }) =>
				(definition?.references ?? [])
					.filter(reference => means(reference, target, folder))
					.map(reference => ({ definition: definition!, name: { text: reference.name, span: reference.span } })),
			),
		)
	return [...own, ...others]
}
