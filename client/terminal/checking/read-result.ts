import { readFile } from 'node:fs/promises'
import { Refusal } from '../refusal.ts'
import { reasonOf } from '../workspace/find-files.ts'
import { readStandardInput, standardInput } from '../workspace/standard-input.ts'
import { type CheckResult, type RelatedPlace, type ShownProblem, shownLevels } from './check-result.ts'

/**
 * Reads what `check --format json` has printed into a file; `-` is standard input.
 * @throws {Refusal} where the file cannot be opened, or is none of that kind.
 */
export async function readResult(where: string): Promise<CheckResult> {
	let value: unknown
	try {
		const bytes = where === standardInput ? await readStandardInput() : await readFile(where)
		value = JSON.parse(new TextDecoder().decode(bytes))
	} catch (problem) {
		if (problem instanceof SyntaxError) throw notAResult(where)
		throw new Refusal(`"${where}" cannot be opened: ${reasonOf(problem)}.`)
	}
	if (!isResult(value)) throw notAResult(where)
	return value
}

function notAResult(where: string): Refusal {
	return new Refusal(`"${where}" is not a result of "barstave check --format json".`)
}

function isResult(value: unknown): value is CheckResult {
	const { version, files, shard, problems } = asRecord(value)
	const shardFits = shard === undefined || typeof shard === 'string'
	return version === 1 && isCount(files) && shardFits && Array.isArray(problems) && problems.every(isProblem)
}

function isProblem(value: unknown): value is ShownProblem {
	const { file, line, column, endLine, endColumn, code, level, message, source, related } = asRecord(value)
	return (
		[file, code, message].every(one => typeof one === 'string') &&
		[line, column, endLine, endColumn].every(isCount) &&
		shownLevels.some(one => one === level) &&
		(source === null || typeof source === 'string') &&
		Array.isArray(related) &&
		related.every(isRelated)
	)
}

function isRelated(value: unknown): value is RelatedPlace {
	const { file, line, column, message } = asRecord(value)
	return typeof file === 'string' && isCount(line) && isCount(column) && typeof message === 'string'
}

function isCount(value: unknown): boolean {
	return Number.isSafeInteger(value) && (value as number) >= 0
}

function asRecord(value: unknown): Record<string, unknown> {
	return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {}
}
