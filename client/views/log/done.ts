import type { DoneSets } from '../../../language/reports/planned-against-done.ts'
import type { Reader } from '../reader/reader.ts'
import { logWords as words } from './words.ts'

/** One line of what was done: `4 × 5`, its load, and what else was written of it. */
export interface DoneLine {
	readonly work: string
	readonly load: string | null
	readonly facts: readonly string[]
}

/** What was done of a movement; sets that differ only in how much stand in one line: `8, 8, 7`, `20 m in 14.2 s, 20 m in 13.8 s`. */
export function doneLines(sets: readonly DoneSets[], reader: Reader): DoneLine[] {
	return joined(sets).map(({ work, facts }) => ({
		work: workText(work, reader),
		load: loadText(facts, reader),
		facts: factTexts(facts, reader),
	}))
}

interface Joined {
	readonly work: readonly DoneSets[]
	/** What holds for all of them. */
	readonly facts: DoneSets
}

/** Neighbours that differ in how much alone. */
function joined(sets: readonly DoneSets[]): Joined[] {
	const lists: { work: DoneSets[]; facts: DoneSets }[] = []
	for (const one of sets) {
		const last = lists.at(-1)
		const isSame = last !== undefined && sameBut(last.facts) === sameBut(one)
		if (isSame) last.work.push(one)
		else lists.push({ work: [one], facts: one })
	}
	return lists
}

function sameBut(sets: DoneSets): string {
	return JSON.stringify({
		...sets,
		sets: 0,
		reps: sets.reps === null,
		seconds: sets.seconds === null,
		metres: sets.metres === null,
		tookSeconds: sets.tookSeconds === null,
	})
}

function workText(work: readonly DoneSets[], reader: Reader): string {
	const [only] = work
	if (work.length === 1 && only) return `${reader.number(only.sets)} × ${amountText(only, reader)}`
	return work.flatMap(one => Array.from({ length: one.sets }, () => amountText(one, reader))).join(', ')
}

function amountText({ reps, seconds, metres, tookSeconds }: DoneSets, reader: Reader): string {
	if (seconds !== null) return reader.duration(seconds)
	const amount = metres !== null ? `${reader.number(metres)}\u00a0m` : reps === null ? '–' : reader.number(reps)
	return tookSeconds === null ? amount : words.took(amount, reader.duration(tookSeconds))
}

function loadText({ load, unit, bodyweight }: DoneSets, reader: Reader): string | null {
	const mass = load !== null && unit !== null ? reader.mass(load, unit) : null
	if (!bodyweight) return mass
	return mass === null ? words.bodyweight : words.bodyweightPlus(mass)
}

function factTexts({ rpe, rir, missed, brokeWith, eachSide }: DoneSets, reader: Reader): string[] {
	return [
		...(eachSide ? [words.eachSide] : []),
		...(rpe === null ? [] : [`RPE ${reader.number(rpe)}`]),
		...(rir === null ? [] : [`RIR ${reader.number(rir)}`]),
		...(missed === 0 ? [] : [words.missedReps(reader.number(missed))]),
		...(brokeWith === null ? [] : [words.broke(brokeWith)]),
	]
}
