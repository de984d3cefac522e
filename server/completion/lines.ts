import { AstUtils, GrammarAST, type LangiumCoreServices } from 'langium'
import { exampleLines } from '../../language/parser/examples.ts'
import type { TextReader } from '../../language/workspace/text-file.ts'
import { choicesOf, type Expected, firstWords } from './expected.ts'

type Word = Expected & { kind: 'word' }

/** A line that is tried out, and the word that begins it. */
interface Tried {
	readonly word: Word
	readonly line: string
}

/** Lines that say one thing by themselves and another with a date or a percent: such a line may stand again, and in more places. */
const maySayMore = new Set(['TrainsAtLine', 'CapLine', 'MoveLine'])

/**
 * Of the lines that may begin after a text, those that could not stay, with the reason: what is stated once, and is; what stands above the
 * first session. The language itself says so, of a correct line of each kind that is read behind the text.
 * @param definition The rule of the grammar that reads the definition.
 */
export function linesOutOfPlace(
	text: string,
	definition: string,
	words: readonly Word[],
	reader: TextReader,
): ReadonlyMap<Word, string> {
	const lines = choicesOf(`${definition}Line`, reader.grammarServices)
	const left = words.flatMap(word => (lines.includes(word.rule) ? lineFor(word, reader.grammarServices) : []))
	const found = new Map<Word, string>()
	// Of many faults in one definition the first few are told: what has none may only not have been told of.
	for (;;) {
		const faulty = faultyLines(
			text,
			left.filter(({ word }) => !found.has(word)),
			reader,
		)
		if (faulty.length === 0) return found
		for (const [word, reason] of faulty) found.set(word, reason)
	}
}

function faultyLines(text: string, lines: readonly Tried[], reader: TextReader): (readonly [Word, string])[] {
	if (lines.length === 0) return []
	const whole = [text, ...lines.map(({ line }) => line)].join('\n')
	const faults = reader
		.read('', whole)
		.parts.flatMap(part => part.faults.map(({ code, message, span }) => ({ code, message, at: part.start + span.start })))
	let end = text.length
	return lines.flatMap(({ word, line }) => {
		const start = end + 1
		end = start + line.length
		const fault = faults.find(one => one.at === start)
		return fault ? [[word, fault.code === 'stated-twice' ? 'is stated already' : fault.message] as const] : []
	})
}

/** A correct line that begins with a word; none where it has lines of its own, or more to say. */
function lineFor(word: Word, services: LangiumCoreServices): Tried[] {
	const { rule } = word
	const found = services.Grammar.rules.find(one => one.name === rule)
	const example = exampleLines[rule]?.example
	if (!found || example === undefined || maySayMore.has(rule)) return []
	const parts = AstUtils.streamAllContents(found).filter(GrammarAST.isAssignment)
	if (parts.some(({ feature }) => feature === 'lines') || !firstWords(rule, services).includes(word.word)) return []
	// One rule may read lines that begin with different words: `hold 30-90 s`, `sets 3-5`.
	return [{ word, line: example.replace(/^[a-z-]+/, word.word) }]
}
