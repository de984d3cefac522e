import type { FaultCode } from '../model/reading.ts'
import { ruleOf } from '../rules/registry.ts'
import type { FileProblem } from './file-problems.ts'
import type { FileEdit } from './tidy-edits.ts'

/** Faults whose line reads in part as a guess. */
const guesses: ReadonlySet<string> = new Set<FaultCode>(['syntax', 'bad-number', 'bad-date'])

/**
 * The problems of a file that can be corrected without a question to the coach: the correction changes nothing about the training, there
 * is only one, and it takes no word away and makes no other thing of one. Where a line has a fault that is not of that kind, all of the line is the coach's to settle: in
 * `4 x 5 @80` nobody knows what the 80 is until it is said.
 */
export function safelyCorrected(text: string, problems: readonly FileProblem[]): readonly FileProblem[] {
	const safe = new Set(problems.filter(problem => isSafe(problem, text)))
	const unsettled = new Set(
		problems.filter(problem => guesses.has(problem.code) && !safe.has(problem)).map(problem => lineAt(text, problem.start)),
	)
	return [...safe].filter(problem => !unsettled.has(lineAt(text, problem.start)))
}

function isSafe(problem: FileProblem, text: string): boolean {
	if (ruleOf(problem.code)?.fix !== 'safe') return false
	const [correction, another] = problem.corrections
	if (!correction || another || correction.isChoice) return false
	return !guesses.has(problem.code) || !correction.edits.some(edit => takesAway(edit, text))
}

function takesAway({ start, end, text: by }: FileEdit, text: string): boolean {
	return by.trim() === '' && text.slice(start, end).trim() !== ''
}

/** Where the line begins that an offset stands in. */
function lineAt(text: string, offset: number): number {
	return Math.max(text.lastIndexOf('\n', offset - 1), text.lastIndexOf('\r', offset - 1)) + 1
}
