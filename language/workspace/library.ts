import { libraryFiles } from '../library/index.ts'
import type { Definition, DefinitionKind, DefinitionOf } from '../model/definitions.ts'
import { type TextFile, TextReader } from './text-file.ts'

export interface LibraryPlace {
	readonly uri: string
	readonly start: number
}

/** The built-in definitions, read once: anyone can open them, a workspace can replace them. */
export interface Library {
	readonly files: ReadonlyMap<string, TextFile>
	readonly places: ReadonlyMap<Definition, LibraryPlace>
	find<K extends DefinitionKind>(kind: K, name: string): DefinitionOf<K> | undefined
	all<K extends DefinitionKind>(kind: K): readonly DefinitionOf<K>[]
}

/** Scheme of the built-in library's files: they are read-only and lie in no folder. */
export const libraryScheme = 'barstave-library'

let read: Library | undefined

export function library(): Library {
	read ??= readLibrary()
	return read
}

function readLibrary(): Library {
	const reader = new TextReader()
	const files = new Map(libraryFiles.map(({ path, text }) => [uriOf(path), reader.read(uriOf(path), text)]))
	const places = new Map<Definition, LibraryPlace>()
	const byName = new Map<string, Definition>()
	for (const [uri, file] of files) {
		for (const part of file.parts) {
			if (!part.definition) continue
			places.set(part.definition, { uri, start: part.start })
			byName.set(`${part.definition.kind} ${part.definition.name.text}`, part.definition)
		}
	}
	const all = [...byName.values()]
	return {
		files,
		places,
		find: (kind, name) => byName.get(`${kind} ${name}`) as never,
		all: kind => all.filter(one => one.kind === kind) as never,
	}
}

function uriOf(path: string): string {
	return `${libraryScheme}:/${path}`
}
