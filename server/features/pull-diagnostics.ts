import {
	type CancellationToken,
	type Diagnostic,
	DocumentDiagnosticReportKind,
	type FullDocumentDiagnosticReport,
	type UnchangedDocumentDiagnosticReport,
	type WorkspaceDocumentDiagnosticReport,
} from 'vscode-languageserver'
import { fileProblems } from '../../language/workspace/file-problems.ts'
import type { Feature, ServerContext } from '../feature.ts'
import { clientUri } from '../positions.ts'
import { toDiagnostics } from '../problems/to-diagnostics.ts'
import { watchProblems } from '../problems/watch.ts'
import { normalUri } from '../uri.ts'
import type { Workspace } from '../workspace.ts'

/** Changes of several files that come together are told of once. */
const pauseBeforeRefresh = 50

/** What an editor knows of a file that is not there any more. */
const gone = 'gone'

/** Does the editor ask for problems? Then none are sent unasked. */
export function asksForProblems({ client, wantsProblemsPushed }: ServerContext): boolean {
	return client.textDocument?.diagnostic !== undefined && !wantsProblemsPushed
}

/** Gives problems when they are asked for; an editor that has the latest already is told just that. */
export const pullDiagnostics: Feature = {
	capabilities: {},
	capabilitiesFor: context =>
		asksForProblems(context)
			? { diagnosticProvider: { identifier: 'barstave', interFileDependencies: true, workspaceDiagnostics: true } }
			: {},
	register(context) {
		if (!asksForProblems(context)) return
		const { connection, workspace, client } = context
		const reports = new Reports(workspace)
		const changes = new Changes()
		const canRefresh = client.workspace?.diagnostics?.refreshSupport ?? false
		let refresh: ReturnType<typeof setTimeout> | undefined
		watchProblems(workspace, uri => {
			changes.tell()
			// An editor asks for the text that was typed in anyhow.
			if (!canRefresh || reports.wasTypedIn(uri)) return
			clearTimeout(refresh)
			refresh = setTimeout(() => void connection.languages.diagnostics.refresh(), pauseBeforeRefresh)
		})
		connection.languages.diagnostics.on(async ({ textDocument, previousResultId }) => {
			// Names of files that are not read yet would be missing: an editor that can be told to ask again gets the plain faults meanwhile.
			if (!canRefresh) await workspace.allRead()
			workspace.settle()
			return reports.of(normalUri(textDocument.uri), previousResultId)
		})
		connection.languages.diagnostics.onWorkspace(async ({ previousResultIds }, token) => {
			const known = new Map(previousResultIds.map(({ uri, value }) => [normalUri(uri), value]))
			await workspace.idle()
			for (;;) {
				workspace.settle()
				const items = reports.ofAll(known)
				// Where nothing is new, the answer waits until something is: an editor asks again as soon as it has one.
				if (known.size === 0 || items.length > 0 || token.isCancellationRequested) return { items }
				await changes.next(token)
			}
		})
	},
}

/** Every file's last list of problems, by a number that grows with each change. */
class Reports {
	private readonly last = new Map<string, { readonly text: string; readonly id: string }>()
	private readonly typed = new Map<string, number>()
	private count = 0

	constructor(private readonly workspace: Workspace) {}

	of(uri: string, knownId: string | undefined): FullDocumentDiagnosticReport | UnchangedDocumentDiagnosticReport {
		this.wasTypedIn(uri)
		const items = this.problemsOf(uri)
		if (items === undefined) return { kind: DocumentDiagnosticReportKind.Full, resultId: gone, items: [] }
		const text = JSON.stringify(items)
		let report = this.last.get(uri)
		if (report?.text !== text) {
			report = { text, id: String(++this.count) }
			this.last.set(uri, report)
		}
		if (report.id === knownId) return { kind: DocumentDiagnosticReportKind.Unchanged, resultId: knownId }
		return { kind: DocumentDiagnosticReportKind.Full, resultId: report.id, items }
	}

	/** What is new since the editor last asked: of each file the list, with the version of an open text. */
	ofAll(known: ReadonlyMap<string, string>): WorkspaceDocumentDiagnosticReport[] {
		const uris = new Set(this.workspace.readyFolders().flatMap(({ folder }) => folder.fileUris()))
		const left = [...known].flatMap(([uri, id]) => (uris.has(uri) || id === gone ? [] : [uri]))
		return [...uris, ...left].flatMap(uri => {
			const report = this.of(uri, known.get(uri))
			if (report.kind === DocumentDiagnosticReportKind.Unchanged) return []
			return [{ ...report, uri: clientUri(this.workspace, uri), version: this.workspace.settledVersion(uri) ?? null }]
		})
	}

	/** Has the open text of the file changed since this was last asked? */
	wasTypedIn(uri: string): boolean {
		const version = this.workspace.settledVersion(uri)
		if (version === undefined || this.typed.get(uri) === version) return false
		this.typed.set(uri, version)
		return true
	}

	private problemsOf(uri: string): Diagnostic[] | undefined {
		const folder = this.workspace.folderOf(uri)
		const file = folder.file(uri)
		if (!file) return undefined
		const problems = fileProblems(folder, uri)
		const sure = this.workspace.isReady(uri) ? problems : problems.filter(problem => problem.code === 'syntax')
		return toDiagnostics(file, sure, this.workspace)
	}
}

/** Lets requests wait for the next change. */
class Changes {
	private waiting: (() => void)[] = []

	tell(): void {
		for (const wake of this.waiting.splice(0)) wake()
	}

	next(token: CancellationToken): Promise<void> {
		return new Promise(resolve => {
			this.waiting.push(resolve)
			token.onCancellationRequested(() => resolve())
		})
	}
}
