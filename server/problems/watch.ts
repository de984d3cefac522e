import { computed, effect, untracked } from '@preact/signals-core'
import type { Diagnostic } from 'vscode-languageserver'
import { fileProblems } from '../../language/workspace/file-problems.ts'
import type { Folder } from '../../language/workspace/folder.ts'
import type { Workspace } from '../workspace.ts'
import { toDiagnostics } from './to-diagnostics.ts'

/** Takes a file's problems when they may have changed; `undefined` where the file is gone. */
type Publish = (uri: string, list: Diagnostic[] | undefined) => void

/**
 * Tells of the problems of every file, each when it changes and only then: a file's list is worked out again only when something that it
 * read has changed.
 */
export function watchProblems(workspace: Workspace, publish: Publish): void {
	const watches = new Map<Folder, () => void>()
	effect(() => {
		const folders = new Set(workspace.readyFolders().map(one => one.folder))
		untracked(() => {
			for (const [folder, stop] of watches) {
				if (folders.has(folder)) continue
				stop()
				watches.delete(folder)
			}
			for (const folder of folders) if (!watches.has(folder)) watches.set(folder, watchFolder(workspace, folder, publish))
		})
	})
}

/** Keeps one watch on each file of a folder, as files come and go. Open files come first, the others one by one between requests. */
function watchFolder(workspace: Workspace, folder: Folder, publish: Publish): () => void {
	const watches = new Map<string, () => void>()
	const waiting = new Set<string>()
	const watch = (uri: string) => {
		waiting.delete(uri)
		watches.set(uri, watchFile(workspace, folder, uri, publish))
	}
	const watchNext = () => {
		const [uri] = waiting
		if (uri === undefined) return
		watch(uri)
		if (waiting.size > 0) workspace.later(watchNext)
	}
	const stopWatching = effect(() => {
		const uris = new Set(folder.fileUris())
		untracked(() => {
			for (const uri of waiting) if (!uris.has(uri)) waiting.delete(uri)
			for (const [uri, stop] of watches) {
				if (uris.has(uri)) continue
				stop()
				watches.delete(uri)
				publish(uri, undefined)
			}
			const isIdle = waiting.size === 0
			for (const uri of uris) {
				if (watches.has(uri)) continue
				if (workspace.isOpen(uri)) watch(uri)
				else waiting.add(uri)
			}
			if (isIdle && waiting.size > 0) workspace.later(watchNext)
		})
	})
	return () => {
		waiting.clear()
		stopWatching()
		for (const [uri, stop] of watches) {
			stop()
			// A file that another folder now holds is published from there.
			if (!workspace.folderOf(uri).file(uri)) publish(uri, undefined)
		}
	}
}

function watchFile(workspace: Workspace, folder: Folder, uri: string, publish: Publish): () => void {
	const list = computed(() => {
		const file = folder.file(uri)
		return file && toDiagnostics(file, fileProblems(folder, uri), workspace)
	})
	return effect(() => {
		const found = list.value
		const isOpen = workspace.isOpen(uri)
		untracked(() => publish(uri, isOpen || (found?.length ?? 0) > 0 ? found : []))
	})
}
