import { batch, type Signal, signal } from '@preact/signals-core'
import type { CalendarDate } from '../language/model/quantities.ts'
import { Folder } from '../language/workspace/folder.ts'
import { library, libraryScheme } from '../language/workspace/library.ts'
import { type TextFile, TextReader } from '../language/workspace/text-file.ts'
import type { Files } from './files.ts'
import { isBelow, normalUri, parentOf } from './uri.ts'

/** A text that is open in the editor: it counts instead of what is on the disk. */
export interface OpenText {
	readonly uri: string
	readonly version: number
	readonly text: string
}

/** A folder of the editor, or the loose files that are open from one place outside of all of them. */
interface Root {
	readonly uri: string
	readonly folder: Folder
	/** Fulfilled when all its files have been read. */
	readonly read: Promise<void>
}

/** So many files are read between two looks at what the editor wants. */
const filesAtATime = 20

/**
 * The folders of the editor and the texts that are open in it. Changes of open texts are taken in a moment later, all at once; whoever
 * answers a request calls `settle` first.
 */
export class Workspace {
	readonly reader = new TextReader()
	readonly counters = { filesPublished: 0 }
	/** Grows with each root that comes, goes or has been read. */
	readonly rootsVersion: Signal<number> = signal(0)
	private readonly roots = new Map<string, Root>()
	private readonly loose = new Map<string, Root>()
	private readonly open = new Map<string, OpenText>()
	private readonly openVersion: Signal<number> = signal(0)
	private readonly pending = new Set<string>()
	private readonly settled = new Map<string, number>()
	private readonly ready = new Set<Root>()
	private today: CalendarDate | undefined
	private readonly lastReading = new Map<string, symbol>()
	private waitingWork = 0
	private readonly idleListeners: (() => void)[] = []
	private readonly changeListeners: (() => void)[] = []
	private readonly earlyListeners: ((file: TextFile, folder: Folder) => void)[] = []

	constructor(private readonly files: Files) {}

	// Folders -------------------------------------------------------------------------------------------------------------------------

	/** Says which day it is, to the folders that are there and to those that come. */
	setToday(date: CalendarDate): void {
		this.today = date
		batch(() => {
			for (const folder of this.allFolders()) folder.setToday(date)
		})
	}

	private newFolder(): Folder {
		const folder = new Folder(this.reader)
		folder.setToday(this.today)
		return folder
	}

	/** Takes a folder in and reads its files, the open ones first. */
	addFolder(given: string): Promise<void> {
		const uri = normalUri(given)
		const known = this.roots.get(uri)
		if (known) return known.read
		const folder = this.newFolder()
		const root: Root = { uri, folder, read: Promise.resolve().then(() => this.readFolder(root)) }
		this.roots.set(uri, root)
		for (const text of this.open.values()) this.rehome(text)
		this.rootsVersion.value++
		return root.read
	}

	/** Takes a folder out, with everything that it defines. */
	removeFolder(given: string): void {
		const uri = normalUri(given)
		const root = this.roots.get(uri)
		if (!root) return
		this.roots.delete(uri)
		this.ready.delete(root)
		for (const text of this.open.values()) this.rehome(text)
		this.rootsVersion.value++
	}

	private async readFolder(root: Root): Promise<void> {
		const uris = (await this.files.list(root.uri)).map(normalUri).sort()
		for (let from = 0; from < uris.length; from += filesAtATime) {
			await this.readFiles(root, uris.slice(from, from + filesAtATime))
			await new Promise(resolve => setTimeout(resolve))
		}
		this.ready.add(root)
		this.rootsVersion.value++
		this.tellOfChange()
	}

	private async readFiles(root: Root, uris: readonly string[]): Promise<void> {
		const found = await this.read(uris.filter(uri => !this.open.has(uri)))
		batch(() => {
			for (const { uri, text } of found) {
				// It may have been opened while it was read: then the open text is there already.
				if (text !== undefined && !this.open.has(uri) && this.rootOf(uri) === root) root.folder.setFile(uri, text)
			}
		})
	}

	/** All folders whose files have all been read, and the loose ones. */
	readyFolders(): readonly { readonly uri: string; readonly folder: Folder }[] {
		void this.rootsVersion.value
		return [...[...this.roots.values()].filter(root => this.ready.has(root)), ...this.loose.values()]
	}

	/** Fulfilled when every folder has been read. */
	async allRead(): Promise<void> {
		await Promise.all([...this.roots.values()].map(root => root.read))
	}

	isReady(uri: string): boolean {
		const root = this.rootOf(uri)
		return root === undefined || this.ready.has(root)
	}

	/** The folder in which a file's names are looked up; built-in files see those of the first folder. */
	folderOf(given: string): Folder {
		const uri = normalUri(given)
		if (uri.startsWith(libraryScheme)) return this.roots.values().next().value?.folder ?? this.looseRoot(uri).folder
		return (this.rootOf(uri) ?? this.looseRoot(uri)).folder
	}

	/** The folder of the editor that a file lies in, else the place where it lies. */
	rootUriOf(given: string): string {
		const uri = normalUri(given)
		return this.rootOf(uri)?.uri ?? parentOf(uri)
	}

	/** The folder of the editor that stands first. */
	firstRootUri(): string | undefined {
		void this.rootsVersion.value
		return this.roots.keys().next().value
	}

	/** A file as it was last read; built-in ones included. */
	fileOf(given: string): TextFile | undefined {
		const uri = normalUri(given)
		if (uri.startsWith(libraryScheme)) return library().files.get(uri)
		return this.folderOf(uri).file(uri)
	}

	/** Every folder, whether read or not. */
	allFolders(): readonly Folder[] {
		return [...this.roots.values(), ...this.loose.values()].map(root => root.folder)
	}

	/** The innermost folder that holds a file. */
	private rootOf(uri: string): Root | undefined {
		const holding = [...this.roots.values()].filter(root => isBelow(uri, root.uri))
		return holding.sort((a, b) => b.uri.length - a.uri.length)[0]
	}

	private looseRoot(uri: string): Root {
		const parent = parentOf(uri)
		let root = this.loose.get(parent)
		if (!root) {
			root = { uri: parent, folder: this.newFolder(), read: Promise.resolve() }
			this.loose.set(parent, root)
			this.rootsVersion.value++
		}
		return root
	}

	// Open texts ----------------------------------------------------------------------------------------------------------------------

	/** A text was opened or changed. Whoever sends a byte-order mark counts it as a character: it stays, as space before the first word. */
	setOpen(given: string, version: number, text: string): void {
		const uri = normalUri(given)
		if (uri.startsWith(libraryScheme)) return
		const isNew = !this.open.has(uri)
		this.open.set(uri, { uri: given, version, text })
		this.pending.add(uri)
		if (isNew) this.openVersion.value++
	}

	/** A text was closed: what is on the disk counts again, or nothing where the file lies outside of all folders or is gone. */
	async close(given: string): Promise<void> {
		const uri = normalUri(given)
		if (!this.open.delete(uri)) return
		this.pending.delete(uri)
		this.settled.delete(uri)
		this.openVersion.value++
		const root = this.rootOf(uri)
		if (root) await this.working(() => this.takeFromDisk([uri]))
		else this.removeLoose(uri)
	}

	openText(given: string): OpenText | undefined {
		void this.openVersion.value
		return this.open.get(normalUri(given))
	}

	/** The version of an open text that has been taken in; a newer one may wait. */
	settledVersion(given: string): number | undefined {
		return this.settled.get(normalUri(given))
	}

	/** The texts that are open in the editor. */
	openUris(): readonly string[] {
		void this.openVersion.value
		return [...this.open.keys()]
	}

	isOpen(given: string): boolean {
		return this.openText(given) !== undefined
	}

	get hasPending(): boolean {
		return this.pending.size > 0
	}

	/** Takes in the changes of open texts. */
	settle(): void {
		if (this.pending.size === 0) return
		const uris = [...this.pending]
		this.pending.clear()
		batch(() => {
			for (const uri of uris) {
				const text = this.open.get(uri)
				if (!text) continue
				this.settled.set(uri, text.version)
				this.folderOf(uri).setFile(uri, text.text)
			}
		})
		this.tellOfChange()
		for (const uri of uris) {
			const file = this.isReady(uri) ? undefined : this.fileOf(uri)
			if (file) for (const listener of this.earlyListeners) listener(file, this.folderOf(uri))
		}
	}

	/** Does a piece of work when nothing else is asked; requests that come meanwhile are answered first. */
	later(work: () => void): void {
		void this.working(async () => {
			await new Promise(resolve => setTimeout(resolve))
			work()
		})
	}

	/** Does work that others may wait for. */
	private async working(work: () => Promise<void>): Promise<void> {
		this.waitingWork++
		try {
			await work()
		} finally {
			this.waitingWork--
			if (this.waitingWork === 0) for (const done of this.idleListeners.splice(0)) done()
		}
	}

	/** Fulfilled when every folder and every file that has changed has been read, and no work waits. */
	async idle(): Promise<void> {
		await this.allRead()
		if (this.waitingWork > 0) await new Promise<void>(resolve => this.idleListeners.push(resolve))
	}

	/** Calls back after every change of what is defined anywhere. */
	onChange(listener: () => void): void {
		this.changeListeners.push(listener)
	}

	private tellOfChange(): void {
		for (const listener of this.changeListeners) listener()
	}

	/** Calls back with open texts that are read before the other files of their folder are. */
	onEarlyText(listener: (file: TextFile, folder: Folder) => void): void {
		this.earlyListeners.push(listener)
	}

	/** After folders came or went, an open text may belong elsewhere. */
	private rehome(text: OpenText): void {
		const uri = normalUri(text.uri)
		const home = this.folderOf(uri)
		batch(() => {
			for (const { folder } of [...this.roots.values(), ...this.loose.values()]) if (folder !== home) folder.removeFile(uri)
			home.setFile(uri, text.text)
		})
	}

	private removeLoose(uri: string): void {
		const parent = parentOf(uri)
		const root = this.loose.get(parent)
		if (!root) return
		root.folder.removeFile(uri)
		if (root.folder.fileUris().length > 0) return
		this.loose.delete(parent)
		this.rootsVersion.value++
	}

	// Files on the disk ---------------------------------------------------------------------------------------------------------------

	/** Files or whole folders were made, changed or deleted outside of the editor. */
	filesChanged(given: readonly string[]): Promise<void> {
		return this.working(async () => {
			const named = given.map(normalUri)
			// An editor names a folder that went or came, and not the files in it.
			const folders = named.filter(uri => !isOurs(uri) && !this.isHidden(uri))
			const below = await Promise.all(folders.map(uri => this.allBelow(uri)))
			await this.takeFromDisk([...new Set([...named.filter(isOurs), ...below.flat()])])
		})
	}

	/** Our files below a folder: those that are known, and those that are there now. */
	private async allBelow(folder: string): Promise<string[]> {
		const known =
			this.rootOf(`${folder}/`)
				?.folder.fileUris()
				.filter(uri => isBelow(uri, folder)) ?? []
		const there = await this.files.list(folder)
		return [...known, ...there.map(normalUri)]
	}

	private async takeFromDisk(uris: readonly string[]): Promise<void> {
		const found = await this.read(uris)
		batch(() => {
			for (const { uri, text } of found) {
				const root = this.rootOf(uri)
				if (!root || this.open.has(uri) || this.isHidden(uri)) continue
				if (text === undefined) root.folder.removeFile(uri)
				else root.folder.setFile(uri, text)
			}
		})
		this.tellOfChange()
	}

	/** What the disk has of files now; without those of which another reading has begun meanwhile: that one is newer, whichever ends first. */
	private async read(uris: readonly string[]): Promise<{ readonly uri: string; readonly text: string | undefined }[]> {
		const reading = Symbol()
		for (const uri of uris) this.lastReading.set(uri, reading)
		const texts = await Promise.all(uris.map(uri => this.files.read(uri)))
		return uris.flatMap((uri, index) => {
			if (this.lastReading.get(uri) !== reading) return []
			this.lastReading.delete(uri)
			return [{ uri, text: texts[index] }]
		})
	}

	/** Is it a part of its folder that is never read? */
	private isHidden(uri: string): boolean {
		const root = this.rootOf(`${uri}/`)
		return /(^|\/)(\.[^/]*|node_modules)(\/|$)/.test(root ? uri.slice(root.uri.length) : uri)
	}
}

function isOurs(uri: string): boolean {
	return uri.endsWith('.stave')
}
