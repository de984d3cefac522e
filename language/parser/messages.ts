import type { IRecognitionException, IToken } from 'chevrotain'
import { type DefinitionKind, definitionKinds } from '../model/definitions.ts'
import type { Fault } from '../model/reading.ts'
import type { Span } from '../model/text.ts'
import { exampleLines } from './examples.ts'

/** Parts of a line that are too small to explain it by: the line around them is shown instead. */
const smallParts = new Set([
	'Range',
	'Mass',
	'Time',
	'Gate',
	'GateLoad',
	'Work',
	'DateBound',
	'Target',
	'Clause',
	'Role',
	'ChangeUnit',
	'DeloadShare',
	'Because',
	'NamedDay',
	'NumberedDay',
])

/** What a definition's lines begin with, in the order in which a coach meets them. */
const lineWords: Readonly<Record<DefinitionKind, readonly string[]>> = {
	movement: [
		...['pattern', 'trains', 'muscles', 'role', 'equipment', 'sets', 'reps', 'hold', 'carry', 'intensity', 'at most', 'apart'],
		...['percent of', 'requires', 'not before', 'not after', 'load', 'source', 'note'],
	],
	breakdown: ['weak link', 'needs', 'answered by', 'caution', 'source', 'note'],
	progression: ['step', 'source', 'note'],
	limits: [
		...['load rises', 'volume rises', 'a lighter week', 'heavy', 'session at most', 'bests', 'gates', 'no set above'],
		...['muscle sets', 'estimate with', 'deviation', 'source', 'note'],
	],
	gym: ['bar', 'plates', 'collars', 'dumbbells', 'stack', 'fixed', 'equipment', 'round', 'source', 'note'],
	lifter: [
		...['trains at', 'bodyweight', 'best', 'base', 'fails', 'keep', 'passed', 'available', 'avoid', 'allow', 'source', 'note'],
	],
	block: [
		...['weeks', 'deload', 'targets', 'answers', 'percents of', 'requires', 'turn', 'session', 'main', 'accessory', 'warm-up'],
		...['conditioning', 'test', 'week', 'each week', 'each session', 'once', 'with the item above', 'allow', 'source', 'note'],
	],
	plan: [...['start', 'days', 'run', 'swap', 'add', 'drop', 'scale', 'move', 'pause', 'for', 'meet', 'allow', 'source', 'note']],
	log: ['on', 'did', 'felt', 'hurt', 'cleared', 'note'],
	team: ['members', 'trains at', 'source', 'note'],
	rules: ['the name of a rule and a level', 'source', 'note'],
}

/** What may stand below a session. */
const wordsInSession = [
	...['main', 'accessory', 'warm-up', 'conditioning', 'test', 'week', 'each week', 'each session', 'once', 'with the item above'],
	...['note', 'allow', 'session'],
]

/** What stands here, and what a correct line of that kind is: in a coach's words, never the parser's. */
export function explainFault(error: IRecognitionException, tokens: readonly IToken[], isAtEnd: boolean): string {
	const kind = tokens[0]?.tokenType.name as DefinitionKind
	const found = isAtEnd || error.token.startOffset === undefined ? undefined : error.token.image
	const rule = innermostLine(error)
	if (!rule || !isInLine(error)) {
		if (isHeader(error, tokens)) return explainHeader(kind, found)
		if (found === 'allow') {
			return 'An exception stands inside an item, session, block, run, plan or lifter, and here it cannot. Or set the level of the rule for all: rules house with a line such as missed-work off.'
		}
		const line = found === undefined ? undefined : lineThatBegins(found, kind)
		if (line) return `This line is not whole. Write ${line.what} like this: ${line.example}`
		const isInSession = kind === 'block' && tokens.some(token => token.tokenType.name === 'session' && token !== error.token)
		const words = isInSession ? wordsInSession : (lineWords[kind] ?? definitionKinds)
		return `${quote(found)} does not fit here. Lines of ${article(kind)} begin with: ${words.join(', ')}.`
	}
	const { what, example } = exampleLines[rule]!
	const begin = found === undefined ? 'The line ends too early.' : `${quote(found)} does not fit here.`
	return `${begin} Write ${what} like this: ${example}`
}

/** Is the fault within a line, and not where one begins? */
export function isInLine(error: IRecognitionException): boolean {
	const rule = innermostLine(error)
	return rule !== undefined && rule !== 'Document' && !(definitionKinds as readonly string[]).includes(rule.toLowerCase())
}

/** A line of a definition of that kind that begins with a word. */
function lineThatBegins(word: string, kind: DefinitionKind): { readonly what: string; readonly example: string } | undefined {
	if (!lineWords[kind]?.some(words => words.split(' ')[0] === word)) return undefined
	const begins = ({ example }: { readonly example: string }) => example.split(' ')[0] === word
	return ['main', 'accessory', 'warm-up', 'conditioning', 'test'].includes(word)
		? exampleLines.Item
		: Object.values(exampleLines).find(begins)
}

function isHeader(error: IRecognitionException, tokens: readonly IToken[]): boolean {
	return tokens.length < 2 || error.token === tokens[1] || error.token === tokens[0]
}

function explainHeader(kind: DefinitionKind, found: string | undefined): string {
	const name = kind.slice(0, 1).toUpperCase() + kind.slice(1)
	const { example } = exampleLines[kind === 'rules' ? 'RuleLevels' : name]!
	const begin = found === undefined ? `"${kind}" needs a name.` : `After "${kind}" stands a name, not ${quote(found)}.`
	return `${begin} Write it like this: ${example}`
}

/** The innermost rule of the grammar, at the fault, that is a line of its own. */
function innermostLine(error: IRecognitionException): string | undefined {
	const stack = error.context.ruleStack.map(name => name.replace('\u200B', ''))
	return stack.findLast(name => name in exampleLines && !smallParts.has(name))
}

function article(kind: string | undefined): string {
	if (kind === undefined) return 'a definition'
	return kind === 'limits' || kind === 'rules' ? `"${kind}"` : `a ${kind}`
}

/** About characters that mean nothing where they stand. */
export function meansNothing(text: string, span: Span): Fault {
	const begin = span.end - span.start > 2 ? 'These characters mean' : `${quote(text)} means`
	const message = `${begin} nothing here. Text that is for people stands in quotes, or after //.`
	return { code: 'syntax', span, message, corrections: [{ title: 'Remove it', edits: [{ span, text: '' }] }] }
}

/** A word as it is quoted in a message; long ones are cut. */
export function quote(text: string | undefined): string {
	if (text === undefined) return 'The end of the text'
	const short = text.length > 40 ? `${text.slice(0, 39)}…` : text
	return short.startsWith('"') ? short : `"${short}"`
}
