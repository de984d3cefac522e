import { type DocumentSymbol, SymbolKind } from 'vscode-languageserver'
import { dayText } from '../../language/compute/session-days.ts'
import type { Definition, DefinitionKind, MemberDays, MemberRun, Plan, Run } from '../../language/model/definitions.ts'
import type { Span } from '../../language/model/text.ts'
import type { TextFile } from '../../language/workspace/text-file.ts'
import type { Feature } from '../feature.ts'
import { rangeOf } from '../positions.ts'

/** Kinds of symbols by what they look like in an outline; the protocol has none for training. */
export const symbolKinds: Readonly<Record<DefinitionKind, SymbolKind>> = {
	movement: SymbolKind.Function,
	breakdown: SymbolKind.Event,
	progression: SymbolKind.Enum,
	limits: SymbolKind.Constant,
	gym: SymbolKind.Module,
	lifter: SymbolKind.Object,
	block: SymbolKind.Class,
	plan: SymbolKind.Interface,
	log: SymbolKind.Array,
	team: SymbolKind.Namespace,
	rules: SymbolKind.Constant,
}

/** The outline: definitions, their sessions and items, runs, lines for one member of a team, and days. */
export const documentSymbols: Feature = {
	capabilities: { documentSymbolProvider: true },
	register({ connection, workspace }) {
		connection.onDocumentSymbol(({ textDocument }) => {
			workspace.settle()
			const file = workspace.fileOf(textDocument.uri)
			if (!file) return null
			return file.parts.flatMap(part => (part.definition ? [symbolOf(file, part.start, part.definition)] : []))
		})
	},
}

interface Outlined {
	readonly name: string
	readonly detail?: string
	readonly kind: SymbolKind
	readonly span: Span
	readonly named: Span
	readonly children?: readonly Outlined[]
}

function symbolOf(file: TextFile, start: number, definition: Definition): DocumentSymbol {
	return placed(file, start, {
		name: definition.title?.text || definition.name.text || definition.kind,
		detail: definition.kind,
		kind: symbolKinds[definition.kind],
		span: definition.span,
		named: definition.name.span,
		children: partsOf(definition),
	})
}

function placed(file: TextFile, start: number, outlined: Outlined): DocumentSymbol {
	const { name, detail, kind, named, children = [] } = outlined
	const whole = wholeOf(outlined)
	return {
		name: name === '' ? '(no name)' : name,
		...(detail === undefined ? {} : { detail }),
		kind,
		range: rangeOf(file, start + whole.start, start + whole.end),
		selectionRange: rangeOf(file, start + named.start, start + Math.max(named.start, named.end)),
		children: children.map(child => placed(file, start, child)),
	}
}

/** All that belongs to it: where the words of a text are read in another order, a name or a part may lie outside of what it belongs to. */
function wholeOf({ span, named, children = [] }: Outlined): Span {
	const spans = [span, named, ...children.map(wholeOf)]
	return { start: Math.min(...spans.map(({ start }) => start)), end: Math.max(...spans.map(({ end }) => end)) }
}

function partsOf(definition: Definition): Outlined[] {
	switch (definition.kind) {
		case 'block':
			return definition.sessions.map(session => ({
				name: session.title?.text ?? session.name.text,
				detail: session.days.map(dayText).join(', '),
				kind: SymbolKind.Method,
				span: session.span,
				named: session.name.span,
				children: session.items.map(item => ({
					name: item.movement.text,
					detail: item.role,
					kind: SymbolKind.Field,
					span: item.span,
					named: item.movement.span,
				})),
			}))
		case 'plan':
			return [
				...definition.runs.map(run => ({
					name: run.block.text,
					detail: run.from ?? 'run',
					kind: SymbolKind.Method,
					span: run.span,
					named: run.block.span,
					children: run.members.map(forMember),
				})),
				...membersBesideRuns(definition).map(forMember),
			].sort((a, b) => a.span.start - b.span.start)
		case 'log':
			return definition.entries.map(entry => ({
				name: entry.on ?? '',
				detail: `${entry.missed ? 'missed ' : ''}${entry.session?.text ?? ''}`,
				kind: SymbolKind.Method,
				span: entry.span,
				named: entry.span,
			}))
		case 'progression':
			return definition.steps.map(step => ({
				name: step.movement.text,
				kind: SymbolKind.EnumMember,
				span: step.span,
				named: step.movement.span,
			}))
		default:
			return []
	}
}

function forMember({ member, span }: MemberRun | MemberDays): Outlined {
	return { name: member.text, detail: 'for', kind: symbolKinds.lifter, span, named: member.span }
}

/** The lines of a plan that hold for one member and stand in no run. */
export function membersBesideRuns({ members, runs }: Plan): readonly MemberDays[] {
	const isInside = (span: Span, run: Run) => run.span.start <= span.start && span.end <= run.span.end
	return members.filter(({ span }) => !runs.some(run => isInside(span, run)))
}
