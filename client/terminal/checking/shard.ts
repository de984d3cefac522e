import { Refusal } from '../refusal.ts'
import { type CheckResult, resultOf } from './check-result.ts'

/** Part `number` of `of`, both from 1. */
export interface Shard {
	readonly number: number
	readonly of: number
}

/** Reads `2/4`; `undefined` for anything else. */
export function readShard(text: string): Shard | undefined {
	const [, number, of] = /^([1-9]\d{0,3})\/([1-9]\d{0,3})$/.exec(text) ?? []
	const shard = { number: Number(number), of: Number(of) }
	return of !== undefined && shard.number <= shard.of ? shard : undefined
}

/** A part of the files: every file is in one part, and the parts are of like size. */
export function partOf(paths: readonly string[], shard: Shard): string[] {
	return paths.filter((_, index) => index % shard.of === shard.number - 1)
}

/**
 * Puts the results of all parts together.
 * @throws {Refusal} where a part is missing or stands twice: a whole that is none would hide problems.
 */
export function merge(results: readonly CheckResult[]): CheckResult {
	const shards = results.flatMap(({ shard }) => (shard === undefined ? [] : [shard]))
	if (shards.length > 0) checkParts(shards, results.length)
	return resultOf(
		results.reduce((files, result) => files + result.files, 0),
		results.flatMap(result => result.problems),
	)
}

function checkParts(shards: readonly string[], results: number): void {
	const parts = shards.map(readShard)
	const of = parts[0]?.of ?? 0
	if (shards.length < results || parts.some(part => part?.of !== of)) {
		throw new Refusal('The results to be merged are not parts of one whole.')
	}
	for (let number = 1; number <= of; number++) {
		const found = parts.filter(part => part?.number === number).length
		if (found === 0) throw new Refusal(`Part ${number}/${of} is missing from the results to be merged.`)
		if (found > 1) throw new Refusal(`Part ${number}/${of} stands more than once among the results to be merged.`)
	}
}
