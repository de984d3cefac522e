import { computed, effect, type ReadonlySignal, untracked } from '@preact/signals-core'
import type { Diagnostic } from 'vscode-languageserver'
import { fileProblems } from '../../language/workspace/file-problems.ts'
import type { Folder } from '../../language/workspace/folder.ts'
import type { Workspace } from '../workspace.ts'
import { toDiagnostics } from './to-diagnostics.ts'

/** Takes a file's problems when they may have changed; `undefined` where the file is gone. */
type Publish = (uri: string, list: Diagnostic[] | undefined) => void

/** So long is looked at files, in milliseconds, before what the editor has asked meanwhile is answered. */
const stretch = 8

/**
 * Tells of the problems of every file, each when it changes and only then: a file's list is worked out again only when something that it
 * read has changed. Whoever asks for something right after a change is answered before the rules have looked at it.
 */
export function watchProblems(workspace: Workspace, publish: Publish): void {
	const watch = new ProblemWatch(workspace, publish)
	effect(() => {
		for (const { folder } of workspace.readyFolders()) void folder.version
		workspace.openUris()
		untracked(() => watch.lookAgain())
	})
}

interface WatchedFile {
	readonly folder: Folder
	readonly list: ReadonlySignal<Diagnostic[] | undefined>
	told: { readonly list: Diagnostic[] | undefined; readonly isOpen: boolean } | undefined
}

class ProblemWatch {
	private readonly watched = new Map<string, WatchedFile>()
	private waiting = new Set<string>()
	private isLooking = false

	constructor(
		private readonly workspace: Workspace,
		private readonly publish: Publish,
	) {}

	/** Looks at every file once more, a moment later. Open files come first. */
	lookAgain(): void {
		const folderOf = new Map(
			this.workspace.readyFolders().flatMap(({ folder }) => folder.fileUris().map(uri => [uri, folder] as const)),
		)
		for (const [uri, { folder }] of this.watched) {
			const now = folderOf.get(uri)
			if (now === folder) continue
			this.watched.delete(uri)
			if (now === undefined) this.publish(uri, undefined)
		}
		for (const [uri, folder] of folderOf) {
			if (this.watched.has(uri)) continue
			this.watched.set(uri, { folder, list: this.listOf(uri, folder), told: undefined })
		}
		const uris = [...this.watched.keys()]
		this.waiting = new Set([...uris.filter(uri => this.workspace.isOpen(uri)), ...uris])
		this.lookSoon()
	}

	private lookSoon(): void {
		if (this.isLooking || this.waiting.size === 0) return
		this.isLooking = true
		this.workspace.later(() => this.look())
	}

	private listOf(uri: string, folder: Folder): WatchedFile['list'] {
		return computed(() => {
			const file = folder.file(uri)
			return file && toDiagnostics(file, fileProblems(folder, uri), this.workspace)
		})
	}

	private look(): void {
		// Whatever goes wrong at a file, the next change is looked at.
		this.isLooking = false
		const end = performance.now() + stretch
		for (const uri of this.waiting) {
			this.waiting.delete(uri)
			this.tell(uri)
			if (performance.now() >= end) break
		}
		this.lookSoon()
	}

	private tell(uri: string): void {
		const file = this.watched.get(uri)
		if (!file) return
		const list = file.list.value
		const isOpen = this.workspace.isOpen(uri)
		if (file.told?.list === list && file.told?.isOpen === isOpen) return
		file.told = { list, isOpen }
		this.publish(uri, isOpen || (list?.length ?? 0) > 0 ? list : [])
	}
}
