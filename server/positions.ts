import type { Location, Position, Range } from 'vscode-languageserver'
import { TextDocument } from 'vscode-languageserver-textdocument'
import type { Definition } from '../language/model/definitions.ts'
import type { Span } from '../language/model/text.ts'
import type { Folder, Place } from '../language/workspace/folder.ts'
import type { TextFile } from '../language/workspace/text-file.ts'
import type { Workspace } from './workspace.ts'

const documents = new WeakMap<TextFile, TextDocument>()

/** Offsets and positions of a file, in UTF-16 units as the protocol says. */
function documentOf(file: TextFile): TextDocument {
	let document = documents.get(file)
	if (!document) {
		document = TextDocument.create(file.uri, 'barstave', 0, file.text)
		documents.set(file, document)
	}
	return document
}

export function rangeOf(file: TextFile, start: number, end: number): Range {
	const document = documentOf(file)
	return { start: document.positionAt(start), end: document.positionAt(end) }
}

export function offsetOf(file: TextFile, position: Position): number {
	return documentOf(file).offsetAt(position)
}

/** The URI as the editor spells it where the file is open, else our own spelling. */
export function clientUri(workspace: Workspace, uri: string): string {
	return workspace.openText(uri)?.uri ?? uri
}

export function locationOf(workspace: Workspace, place: Place | undefined): Location | undefined {
	const file = place && workspace.fileOf(place.uri)
	return file && place && { uri: clientUri(workspace, place.uri), range: rangeOf(file, place.start, place.end) }
}

export function locationIn(workspace: Workspace, folder: Folder, definition: Definition, span: Span): Location | undefined {
	return locationOf(workspace, folder.placeOf(definition, span))
}
