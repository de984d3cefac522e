import { batch, computed, type ReadonlySignal, type Signal, signal } from '@preact/signals-core'
import { type Definition, type DefinitionKind, definitionKinds } from '../model/definitions.ts'

/** Where a definition stands among all of a workspace: by file, then by place; the first of two with one name is the one that counts. */
interface Entry {
	readonly uri: string
	readonly definition: Definition
}

const none: readonly Definition[] = []

/**
 * Who defines what, and who refers to it, updated in place. Each name is a signal of its own, so that a change of one name makes only
 * what has looked it up work again.
 */
export class NameIndex {
	private readonly byFile = new Map<string, readonly Definition[]>()
	private readonly defining = new EntryTable()
	private readonly referring = new EntryTable()
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
		const keptNow = definitions.filter(one => was.has(one))
		const moved = before.filter(one => stays.has(one)).some((one, index) => keptNow[index] !== one)
		const touched = moved ? [...changed, ...keptNow] : changed
		batch(() => {
			this.defining.refresh(new Set(touched.map(keyOf)), uri, definitions, one => [keyOf(one)])
			this.referring.refresh(new Set(touched.flatMap(referencesOf)), uri, definitions, referencesOf)
			for (const kind of new Set(touched.map(one => one.kind))) this.versions.get(kind)!.value++
		})
	}

	/** All definitions of one kind and name, in their fixed order. */
	named(kind: DefinitionKind, name: string): readonly Definition[] {
		return this.defining.of(`${kind} ${name}`)
	}

	/** All definitions that refer to one kind and name, in their fixed order. */
	referrers(kind: DefinitionKind, name: string): readonly Definition[] {
		return this.referring.of(`${kind} ${name}`)
	}

	/** All definitions of a kind, by name, then in their fixed order. */
	ofKind(kind: DefinitionKind): readonly Definition[] {
		return this.lists.get(kind)!.value
	}

	/** How often a name has come to mean something else: for tests and the bench. */
	get namesChanged(): number {
		return this.defining.changes
	}

	private list(kind: DefinitionKind): readonly Definition[] {
		void this.versions.get(kind)!.value
		const start = `${kind} `
		const keys = this.defining.keys().filter(key => key.startsWith(start))
		return keys.sort().flatMap(key => this.defining.peek(key))
	}
}

/** Definitions by a key, each key with a signal; those of one key stand by file, then by place. */
class EntryTable {
	changes = 0
	private readonly entries = new Map<string, readonly Entry[]>()
	private readonly signals = new Map<string, Signal<readonly Definition[]>>()

	keys(): string[] {
		return [...this.entries.keys()]
	}

	of(key: string): readonly Definition[] {
		return this.signalOf(key).value
	}

	/** The same, without waiting for changes. */
	peek(key: string): readonly Definition[] {
		return (this.entries.get(key) ?? []).map(entry => entry.definition)
	}

	/** Works out anew what stands at some keys, where a file's definitions have changed. */
	refresh(
		keys: ReadonlySet<string>,
		uri: string,
		definitions: readonly Definition[],
		keysOf: (one: Definition) => readonly string[],
	) {
		const own = new Map<string, Set<Definition>>([...keys].map(key => [key, new Set()]))
		for (const definition of definitions) for (const key of keysOf(definition)) own.get(key)?.add(definition)
		for (const [key, found] of own) {
			const others = (this.entries.get(key) ?? []).filter(entry => entry.uri !== uri)
			const entries = [...others, ...[...found].map(definition => ({ uri, definition }))]
			entries.sort((a, b) => (a.uri < b.uri ? -1 : a.uri > b.uri ? 1 : 0))
			if (entries.length === 0) this.entries.delete(key)
			else this.entries.set(key, entries)
			this.changes++
			this.signalOf(key).value = entries.map(entry => entry.definition)
		}
	}

	private signalOf(key: string): Signal<readonly Definition[]> {
		let found = this.signals.get(key)
		if (!found) {
			found = signal(none)
			this.signals.set(key, found)
		}
		return found
	}
}

function keyOf(definition: Definition): string {
	return `${definition.kind} ${definition.name.text}`
}

function referencesOf(definition: Definition): readonly string[] {
	return definition.references.flatMap(({ kind, orKind, name }) =>
		orKind ? [`${kind} ${name}`, `${orKind} ${name}`] : [`${kind} ${name}`],
	)
}
