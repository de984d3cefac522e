import { batch, computed, type ReadonlySignal, type Signal, signal } from '@preact/signals-core'
import { type Definition, type DefinitionKind, definitionKinds } from '../model/definitions.ts'

/** Where a definition stands among all of a workspace: by file, then by place; the first of two with one name is the one that counts. */
interface Entry {
	readonly uri: string
	readonly definition: Definition
}

const none: readonly Definition[] = []

/**
 * Who defines what, updated in place. Each name is a signal of its own, so that a change of one name makes only what has looked it up
 * work again.
 */
export class NameIndex {
	private readonly byFile = new Map<string, readonly Definition[]>()
	private readonly byName = new Map<string, Signal<readonly Definition[]>>()
	private readonly entries = new Map<string, Entry[]>()
	private readonly versions = new Map<DefinitionKind, Signal<number>>(definitionKinds.map(kind => [kind, signal(0)]))
	private readonly lists = new Map<DefinitionKind, ReadonlySignal<readonly Definition[]>>(
		definitionKinds.map(kind => [kind, computed(() => this.list(kind))]),
	)

	/** Puts a file's definitions in place of those that it had; an empty list takes the file out. */
	update(uri: string, definitions: readonly Definition[]): void {
		const before = this.byFile.get(uri) ?? none
		if (definitions.length === 0) this.byFile.delete(uri)
		else this.byFile.set(uri, definitions)
		const stays = new Set(definitions)
		const was = new Set(before)
		const changed = [...before.filter(one => !stays.has(one)), ...definitions.filter(one => !was.has(one))]
		const moved = changed.length === 0 && before.some((one, index) => definitions[index] !== one)
		const touched = moved ? definitions : changed
		batch(() => {
			for (const key of new Set(touched.map(keyOf))) this.refresh(key, uri, definitions)
			for (const kind of new Set(touched.map(one => one.kind))) this.versions.get(kind)!.value++
		})
	}

	/** All definitions of one kind and name, in their fixed order. */
	named(kind: DefinitionKind, name: string): readonly Definition[] {
		return this.signalOf(`${kind} ${name}`).value
	}

	/** All definitions of a kind, by name, then in their fixed order. */
	ofKind(kind: DefinitionKind): readonly Definition[] {
		return this.lists.get(kind)!.value
	}

	private refresh(key: string, uri: string, definitions: readonly Definition[]): void {
		const others = (this.entries.get(key) ?? []).filter(entry => entry.uri !== uri)
		const own = definitions.filter(one => keyOf(one) === key).map(definition => ({ uri, definition }))
		const entries = [...others, ...own].sort((a, b) => (a.uri < b.uri ? -1 : a.uri > b.uri ? 1 : 0))
		if (entries.length === 0) this.entries.delete(key)
		else this.entries.set(key, entries)
		this.signalOf(key).value = entries.map(entry => entry.definition)
	}

	private signalOf(key: string): Signal<readonly Definition[]> {
		let found = this.byName.get(key)
		if (!found) {
			found = signal(none)
			this.byName.set(key, found)
		}
		return found
	}

	private list(kind: DefinitionKind): readonly Definition[] {
		void this.versions.get(kind)!.value
		const start = `${kind} `
		const keys = [...this.entries.keys()].filter(key => key.startsWith(start)).sort()
		return keys.flatMap(key => this.entries.get(key)!.map(entry => entry.definition))
	}
}

function keyOf(definition: Definition): string {
	return `${definition.kind} ${definition.name.text}`
}
