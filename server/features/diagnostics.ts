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
		effect(() => watchFolders(workspace, publish))
		workspace.onEarlyText((file, folder) => {
			// While the folder is still read, names would be missing that are only not there yet.
			const early = fileProblems(folder, file.uri).filter(problem => problem.code === 'syntax')
			publish(file.uri, toDiagnostics(file, early, workspace))
		})
	},
}

type Publish = (uri: string, list: Diagnostic[] | undefined) => void

function watchFolders(workspace: Workspace, publish: Publish): () => void {
	const stops = workspace.readyFolders().map(({ folder }) => untracked(() => watchFolder(workspace, folder, publish)))
	return () => {
		for (const stop of stops) stop()
	}
}

/** Keeps one watch on each file of a folder, as files come and go. */
function watchFolder(workspace: Workspace, folder: Folder, publish: Publish): () => void {
	const watches = new Map<string, () => void>()
	const stopWatching = effect(() => {
		const uris = new Set(folder.fileUris())
		untracked(() => {
			for (const [uri, stop] of watches) {
				if (uris.has(uri)) continue
				stop()
				watches.delete(uri)
				publish(uri, undefined)
			}
			for (const uri of uris) if (!watches.has(uri)) watches.set(uri, watchFile(workspace, folder, uri, publish))
		})
	})
	return () => {
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
