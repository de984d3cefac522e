import type { LangiumCoreServices } from 'langium'
import type { ClientCapabilities, ParameterInformation, SignatureHelp } from 'vscode-languageserver'
import { exampleLines } from '../../language/parser/examples.ts'
import { choicesOf, type Ending, endingOf, firstWords, withSecondWord } from '../completion/expected.ts'
import { isInTextOrComment } from '../completion/places.ts'
import type { Feature } from '../feature.ts'
import { offsetOf } from '../positions.ts'

/** The rules of the grammar that read sets with what belongs to them, and the rule of what may follow the reps. */
const clauseRules: Readonly<Record<string, string>> = { SetGroup: 'Clause', LoggedGroup: 'LoggedClause' }

/** What stands first in them, and in nothing else. */
const groupBegunBy: Readonly<Record<string, string>> = { Ramp: 'SetGroup', LoggedGroup: 'LoggedGroup' }

/** Where a set group's own properties stand among its parts; the clauses come after. */
const partOfProperty: Readonly<Record<string, number>> = { ramp: 0, upTo: 0, sets: 0, work: 1, amount: 1, unit: 1, seconds: 1 }
const ownParts = 2

/** Inside a prescription: which part the cursor is in, how it is written, and what else may stand there. */
export const signatureHelp: Feature = {
	capabilities: { signatureHelpProvider: { triggerCharacters: [' '], retriggerCharacters: [' '] } },
	register({ connection, workspace, client }) {
		connection.onSignatureHelp(({ textDocument, position }): SignatureHelp | null => {
			workspace.settle()
			const file = workspace.fileOf(textDocument.uri)
			if (!file) return null
			const offset = offsetOf(file, position)
			const part = file.parts.findLast(one => one.start < offset)
			if (!part || isInTextOrComment(workspace, file, offset)) return null
			const services = workspace.reader.grammarServices
			const text = file.text.slice(part.start, offset)
			// A new line most likely begins something else, but for what a comma goes on with.
			if (/[^,\s]\s*\n[ \t]*$/.test(text)) return null
			// Half a clause is read as it would go on; of a word that says nothing yet, what stands before it counts.
			const whole = withSecondWord(text)
			const half = whole === undefined ? undefined : endingOf(whole, services)
			const ending = endingOf(text, services)
			const before = ending ?? endingOf(text.replace(/[^\s,]+$/, ''), services)
			return (
				(half && helpAt(half, true, client, services)) ??
				(before ? helpAt(before, ending !== undefined && /[^\s,:]$/.test(text), client, services) : null)
			)
		})
	},
}

function helpAt(
	{ path, next }: Ending,
	isBegun: boolean,
	client: ClientCapabilities,
	services: LangiumCoreServices,
): SignatureHelp | null {
	const at = path.findLastIndex(step => step.rule in clauseRules)
	// Before the first number of a group, also of one after a comma, the group is what comes next.
	const begins = at < 0 && !isBegun ? next.find(rule => rule in groupBegunBy) : undefined
	const group = path[at] ?? (begins && { rule: groupBegunBy[begins]!, property: undefined })
	if (!group) return null
	const clauses = choicesOf(clauseRules[group.rule]!, services)
	const [sets, reps, ...others] = partsOf(clauses, services)
	const readIn = new Set(at < 0 ? [] : path.slice(at).map(step => step.rule))
	const inClause = clauses.findIndex(rule => readIn.has(rule))
	const current = inClause >= 0 ? ownParts + inClause : (partOfProperty[group.property ?? ''] ?? 0)
	const wantsReps = current === 0 && next.includes(group.rule === 'SetGroup' ? 'Work' : group.rule)
	// Where most clauses may follow, the part before is done.
	const isDone = next.filter(rule => clauses.includes(rule)).length > clauses.length / 2
	const active = isBegun || !isDone ? (wantsReps && !isBegun ? 1 : current) : undefined
	const { what, example } = exampleLines.SetGroup!
	const takesNone = client.textDocument?.signatureHelp?.signatureInformation?.noActiveParameterSupport ?? false
	return {
		signatures: [
			{
				label: `${sets!.label} x ${reps!.label} ${others.map(part => `[${part.label}]`).join(' ')}`,
				documentation: `This is how ${what} are written: ${example}`,
				parameters: [sets!, reps!, ...others],
			},
		],
		activeSignature: 0,
		activeParameter: active ?? (takesNone ? null : current),
	}
}

/** The sets, the reps, and each clause by the words that it begins with. */
function partsOf(clauses: readonly string[], services: LangiumCoreServices): ParameterInformation[] {
	const own = [
		{ label: 'sets', documentation: saying('SetGroup') },
		{ label: 'reps', documentation: saying('Work') },
	]
	return [...own, ...clauses.map(rule => ({ label: `${firstWords(rule, services)[0] ?? rule} …`, documentation: saying(rule) }))]
}

function saying(rule: string): string {
	const { what, example } = exampleLines[rule]!
	return `${what.slice(0, 1).toUpperCase()}${what.slice(1)}, as in: ${example}`
}
