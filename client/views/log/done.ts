import type { DoneSets } from '../../../language/reports/planned-against-done.ts'
import type { Reader } from '../reader/reader.ts'
import { logWords as words } from './words.ts'

/** `4 × 5 112.5 kg RPE 7.5`; sets that differ only in their reps stand in one list: `8, 8, 7 80 kg`. */
export function doneText(sets: readonly DoneSets[], reader: Reader): string {
	return joined(sets)
		.map(({ work, facts }) => [workText(work, reader), ...factTexts(facts, reader)].join(' '))
		.join('; ')
}

interface Joined {
	readonly work: readonly DoneSets[]
	/** Of the last of them, which alone may have an effort. */
	readonly facts: DoneSets
}

/** Neighbours at one load, of which all but the last have nothing else to say. */
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
	})
}

function workText(work: readonly DoneSets[], reader: Reader): string {
	const [only] = work
	if (work.length === 1 && only) return `${reader.number(only.sets)} × ${amountText(only, reader)}`
	return work.flatMap(one => Array.from({ length: one.sets }, () => amountText(one, reader))).join(', ')
}

function amountText({ reps, seconds, metres }: DoneSets, reader: Reader): string {
	if (seconds !== null) return reader.duration(seconds)
	if (metres !== null) return `${reader.number(metres)}\u00a0m`
	return reps === null ? '–' : reader.number(reps)
}

function factTexts({ load, unit, bodyweight, rpe, rir, missed, brokeWith, eachSide }: DoneSets, reader: Reader): string[] {
	const mass = load !== null && unit !== null ? reader.mass(load, unit) : null
	return [
		...(bodyweight ? [mass === null ? words.bodyweight : words.bodyweightPlus(mass)] : mass === null ? [] : [mass]),
		...(eachSide ? [words.eachSide] : []),
		...(rpe === null ? [] : [`RPE ${reader.number(rpe)}`]),
		...(rir === null ? [] : [`RIR ${reader.number(rir)}`]),
		...(missed === 0 ? [] : [words.missedReps(reader.number(missed))]),
		...(brokeWith === null ? [] : [words.broke(brokeWith)]),
	]
}
