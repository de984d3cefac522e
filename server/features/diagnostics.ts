import { computed, effect, untracked } from '@preact/signals-core'
import { type Diagnostic, DiagnosticSeverity, DiagnosticTag } from 'vscode-languageserver'
import type { ShownLevel } from '../../language/model/problem.ts'
import { type FileProblem, fileProblems } from '../../language/workspace/file-problems.ts'
import type { Folder } from '../../language/workspace/folder.ts'
import type { TextFile } from '../../language/workspace/text-file.ts'
import type { Feature, ServerContext } from '../feature.ts'
import { clientUri, locationOf, rangeOf } from '../positions.ts'
import { pageUri } from '../rule-pages.ts'
import type { Workspace } from '../workspace.ts'

const severities: Readonly<Record<ShownLevel, DiagnosticSeverity>> = {
	error: DiagnosticSeverity.Error,
	warning: DiagnosticSeverity.Warning,
	info: DiagnosticSeverity.Information,
	hint: DiagnosticSeverity.Hint,
}

/** Words that nothing needs are shown faint. */
const unnecessary = new Set(['unused-definition', 'unused-allow'])

/** More problems than this in one file are counted, not listed. */
const mostInAFile = 100

/**
 * Publishes the problems of every file that is open or has some, each when it changes and only then: a file's list is worked out again only
 * when something that it read has changed.
 */
export const diagnostics: Feature = {
	capabilities: {},
	register({ connection, workspace }) {
		const published = new Map<string, string>()
		const publish = (uri: string, list: Diagnostic[] | undefined) => {
			const text = list && list.length > 0 ? JSON.stringify(list) : ''
			const open = workspace.openText(uri)
			if ((published.get(uri) ?? (open ? undefined : '')) === text) return
			if (list === undefined) published.delete(uri)
			else published.set(uri, text)
			const settled = workspace.settledVersion(uri)
			const version = settled === undefined ? {} : { version: settled }
			workspace.counters.filesPublished++
			void connection.sendDiagnostics({ uri: clientUri(workspace, uri), diagnostics: list ?? [], ...version })
		}
		watchFolders(workspace, publish)
		workspace.onEarlyText((file, folder) => {
			// While the folder is still read, names would be missing that are only not there yet.
			const early = fileProblems(folder, file.uri).filter(problem => problem.code === 'syntax')
			publish(file.uri, toDiagnostics(file, early, workspace))
		})
	},
}

type Publish = (uri: string, list: Diagnostic[] | undefined) => void

/** Keeps one watch on each folder that has been read, as folders come and go. */
function watchFolders(workspace: Workspace, publish: Publish): void {
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

/** A file's problems as the protocol has them, in the order of the text. */
export function toDiagnostics(
	file: TextFile,
	problems: readonly FileProblem[],
	workspace: ServerContext['workspace'],
): Diagnostic[] {
	const listed = problems.slice(0, mostInAFile).map(problem => toDiagnostic(file, problem, workspace))
	const more = problems.length - listed.length
	if (more <= 0) return listed
	const rest = problems.slice(mostInAFile)
	const message = `And ${more} more problems in this file. They show when those above are mended.`
	return [...listed, { ...toDiagnostic(file, rest[0]!, workspace), message }]
}

function toDiagnostic(file: TextFile, problem: FileProblem, workspace: Workspace): Diagnostic {
	const related = problem.related.flatMap(place => {
		const location = locationOf(workspace, place)
		return location ? [{ location, message: place.message }] : []
	})
	return {
		range: rangeOf(file, problem.start, problem.end),
		severity: severities[problem.level],
		code: problem.code,
		codeDescription: { href: pageUri(problem.code) },
		source: 'Barstave',
		message: problem.message,
		...(related.length > 0 ? { relatedInformation: related } : {}),
		...(unnecessary.has(problem.code) ? { tags: [DiagnosticTag.Unnecessary] } : {}),
	}
}
