import { batch, computed, type ReadonlySignal, type Signal, signal } from '@preact/signals-core'
import type { Definition, DefinitionKind, DefinitionOf, Limits, Log, Plan, Team } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { CalendarDate } from '../model/quantities.ts'
import type { Part } from '../model/reading.ts'
import type { Span } from '../model/text.ts'
import { NameIndex } from '../names/name-index.ts'
import { type LibraryPlace, library } from './library.ts'
import { plansIn } from './member-plans.ts'
import type { TextFile, TextReader } from './text-file.ts'
import { trialsOf } from './what-if.ts'

/** Where a definition stands: its file and the offset of its first character there. */
export interface Place {
	readonly uri: string
	readonly start: number
	readonly end: number
}

/**
 * One workspace folder: its files, who defines what in them, and everything that is worked out from them, kept until something that it
 * read changes. Names never cross from one folder to another.
 */
export class Folder implements Programme {
	private readonly files = new Map<string, Signal<TextFile>>()
	private readonly uris = signal<readonly string[]>([])
	private readonly index = new NameIndex()
	private readonly todayGiven = signal<CalendarDate | undefined>(undefined)
	private readonly changes = signal(0)
	private readonly places = new WeakMap<Definition, { file: string; start: number }>()
	private readonly kept = new WeakMap<Definition, Map<unknown, ReadonlySignal<unknown>>>()
	private readonly counts = new Map<unknown, number>()
	private readonly byLifter = new Map<string, ReadonlySignal<readonly Definition[]>>()

	constructor(private readonly reader: TextReader) {}

	// Files ---------------------------------------------------------------------------------------------------------------------------

	/** Takes a file in, or its new text; the same text changes nothing. */
	setFile(uri: string, text: string): TextFile {
		const known = this.files.get(uri)
		const before = known?.peek()
		if (before?.text === text) return before
		return this.take(this.reader.read(uri, text, before))
	}

	/** Another folder with the same texts, none of them read again: for a trial that must not show here. */
	copy(): Folder {
		const copy = new Folder(this.reader)
		copy.todayGiven.value = this.todayGiven.peek()
		for (const file of this.files.values()) copy.take(file.peek())
		return copy
	}

	private take(file: TextFile): TextFile {
		const { uri } = file
		const known = this.files.get(uri)
		const definitions = file.parts.flatMap(part => (part.definition ? [part.definition] : []))
		for (const part of file.parts) if (part.definition) this.places.set(part.definition, { file: uri, start: part.start })
		batch(() => {
			if (known) known.value = file
			else {
				this.files.set(uri, signal(file))
				this.uris.value = [...this.files.keys()].sort()
			}
			this.index.update(uri, definitions)
			this.changes.value = this.changes.peek() + 1
		})
		return file
	}

	/** Takes a file out: its names and problems are gone. */
	removeFile(uri: string): void {
		if (!this.files.has(uri)) return
		batch(() => {
			this.files.delete(uri)
			this.uris.value = [...this.files.keys()].sort()
			this.index.update(uri, [])
			this.changes.value = this.changes.peek() + 1
		})
	}

	/** Another number after each change of a file or of the day, whatever it changes. */
	get version(): number {
		void this.todayGiven.value
		return this.changes.value
	}

	file(uri: string): TextFile | undefined {
		void this.uris.value
		return this.files.get(uri)?.value
	}

	/** All files, by path. */
	fileUris(): readonly string[] {
		return this.uris.value
	}

	/** The place of a stretch of a definition's text; built-in definitions have theirs in the library's files. */
	placeOf(definition: Definition, span: Span): Place | undefined {
		const written = (definition.kind === 'plan' && definition.teamPlan) || definition
		const place = this.places.get(written) ?? libraryPlace(library().places.get(written))
		return place && { uri: place.file, start: place.start + span.start, end: place.start + span.end }
	}

	/** The part of a file in which an offset stands, and where the part begins. */
	partAt(uri: string, offset: number): { part: Part; start: number } | undefined {
		const found = this.file(uri)?.parts.findLast(part => part.start <= offset)
		return found && { part: found, start: found.start }
	}

	// Names ---------------------------------------------------------------------------------------------------------------------------

	find<K extends DefinitionKind>(kind: K, name: string): DefinitionOf<K> | undefined {
		const own = kind === 'plan' && name.includes('/') ? this.memberPlan(name) : this.index.named(kind, name)[0]
		return (own ?? library().find(kind, name)) as DefinitionOf<K> | undefined
	}

	private memberPlan(name: string): Plan | undefined {
		const written = this.index.named('plan', name.slice(0, name.indexOf('/')))[0] as Plan | undefined
		return written && this.plansIn(written).find(plan => plan.name.text === name)
	}

	all<K extends DefinitionKind>(kind: K): readonly DefinitionOf<K>[] {
		const own = kind === 'plan' ? this.plans() : this.index.ofKind(kind)
		const builtIn = library()
			.all(kind)
			.filter(one => this.index.named(kind, one.name.text).length === 0)
		return [...own, ...builtIn] as unknown as readonly DefinitionOf<K>[]
	}

	namesakes(kind: DefinitionKind, name: string): readonly Definition[] {
		return this.index.named(kind, name)
	}

	referrersOf(kind: DefinitionKind, name: string): readonly Definition[] {
		return this.index.referrers(kind, name)
	}

	builtIn<K extends DefinitionKind>(kind: K, name: string): DefinitionOf<K> | undefined {
		return library().find(kind, name)
	}

	plansIn(plan: Plan): readonly Plan[] {
		return this.derived(plan, plansIn)
	}

	private plans(): readonly Plan[] {
		return (this.index.ofKind('plan') as readonly Plan[]).flatMap(plan => this.plansIn(plan))
	}

	plansOf(lifter: string): readonly Plan[] {
		return this.of('plan', lifter, () => this.plans().filter(plan => plan.lifter.text === lifter))
	}

	logsOf(lifter: string): readonly Log[] {
		return this.index.named('log', lifter) as readonly Log[]
	}

	teamsOf(lifter: string): readonly Team[] {
		const teams = () => this.index.ofKind('team') as readonly Team[]
		return this.of('team', lifter, () => teams().filter(team => team.members.some(member => member.text === lifter)))
	}

	limits(): readonly Limits[] {
		return [...(this.index.ofKind('limits') as readonly Limits[]), ...library().all('limits')]
	}

	/** Says which day it is; `undefined` takes it back. What needs no "today" stays as it is. */
	setToday(date: CalendarDate | undefined): void {
		this.todayGiven.value = date
	}

	today(): CalendarDate | undefined {
		return this.todayGiven.value
	}

	isBuiltIn(definition: Definition): boolean {
		return library().places.has(definition)
	}

	trialsOf<D extends Definition>(definition: D): (changed: D) => ReadonlyMap<string, number> {
		return trialsOf(definition, this)
	}

	/** Definitions of a kind that concern a lifter; the same list object as long as its members are the same. */
	private of<K extends DefinitionKind>(
		kind: K,
		lifter: string,
		concerning: () => readonly DefinitionOf<K>[],
	): readonly DefinitionOf<K>[] {
		const key = `${kind} ${lifter}`
		let list = this.byLifter.get(key)
		if (!list) {
			let last: readonly Definition[] = []
			list = computed(() => {
				const next = concerning()
				if (next.length !== last.length || next.some((one, index) => one !== last[index])) last = next
				return last
			})
			this.byLifter.set(key, list)
		}
		return list.value as readonly DefinitionOf<K>[]
	}

	// Results -------------------------------------------------------------------------------------------------------------------------

	/** How often a name has come to mean something else. */
	get namesChanged(): number {
		return this.index.namesChanged
	}

	/** How often a derived value has been worked out, over all definitions: for tests and the bench. */
	timesWorkedOut(compute: unknown): number {
		return this.counts.get(compute) ?? 0
	}

	derived<D extends Definition, T>(definition: D, compute: (definition: D, programme: Programme) => T): T {
		let results = this.kept.get(definition)
		if (!results) {
			results = new Map()
			this.kept.set(definition, results)
		}
		let result = results.get(compute)
		if (!result) {
			result = computed(() => {
				this.counts.set(compute, (this.counts.get(compute) ?? 0) + 1)
				return compute(definition, this)
			})
			results.set(compute, result)
		}
		return result.value as T
	}
}

function libraryPlace(place: LibraryPlace | undefined): { file: string; start: number } | undefined {
	return place && { file: place.uri, start: place.start }
}
