import type { Block, Lifter, Movement, Plan } from '../../language/model/definitions.ts'
import { Folder } from '../../language/workspace/folder.ts'
import { TextReader } from '../../language/workspace/text-file.ts'

/** Making one takes longer than reading most texts. */
const reader = new TextReader()

/** A workspace folder with one file, whatever is wrong with its text. */
export function anyWorkspaceOf(text: string): Folder {
	const folder = new Folder(reader)
	folder.setFile('file:///test.stave', text)
	return folder
}

/** A workspace folder with one file. A text that does not read is a fault of the test, not of what it tests. */
export function workspaceOf(...texts: readonly string[]): Folder {
	const folder = new Folder(reader)
	const file = folder.setFile('file:///test.stave', texts.join('\n'))
	const faults = file.parts.flatMap(part => part.faults).filter(fault => fault.code !== 'old-spelling')
	if (faults.length > 0) throw new Error(faults.map(fault => fault.message).join('\n'))
	return folder
}

export function blockIn(folder: Folder, name: string): Block {
	return found(folder.find('block', name), name)
}

export function planIn(folder: Folder, name: string): Plan {
	return found(folder.find('plan', name), name)
}

export function lifterIn(folder: Folder, name: string): Lifter {
	return found(folder.find('lifter', name), name)
}

export function movementIn(folder: Folder, name: string): Movement {
	return found(folder.find('movement', name), name)
}

function found<T>(definition: T | undefined, name: string): T {
	if (definition === undefined) throw new Error(`the test's text does not define ${name}`)
	return definition
}
