import type { Tempo, Work } from '../model/prescription.ts'
import type { Exact, ExactRange } from '../model/quantities.ts'
import type { PlannedItem, PlannedSet } from '../model/schedule.ts'
import type { Role } from '../model/vocabulary.ts'
import { exact, zero } from './exact.ts'
import { addRanges, eachEnd, nothing, times, timesCount } from './volume/ranges.ts'

/** Seconds of a rep without a tempo (common practice). */
const secondsPerRep = 3

/** Seconds to carry a load one metre: a slow walk (common practice). */
const secondsPerMetre = exact(1)
/** In conditioning, where distances are run or rowed (common practice). */
const secondsPerMetreOfConditioning = exact('0.25')

/** Seconds of one rep; "as fast as possible" counts as one. */
function repSeconds(tempo: Tempo | undefined): Exact {
	if (tempo === undefined) return exact(secondsPerRep)
	return exact(tempo.lowering + tempo.pause + (tempo.lifting === 'x' ? 1 : tempo.lifting) + tempo.top)
}

/**
 * Seconds that a set holds the muscles under tension: reps × tempo, or the hold; of a set on each side, one side's. `undefined` for a
 * carry, whose pace is not known, and for as many reps as a time holds.
 */
export function underTension(work: Work, tempo: Tempo | undefined): ExactRange | undefined {
	switch (work.kind) {
		case 'reps': {
			const each = repSeconds(tempo)
			return timesCount({ from: each, to: each }, work.reps)
		}
		case 'hold':
		case 'time':
			return work.seconds
		case 'carry':
		case 'reps-in-time':
			return undefined
	}
}

/** Seconds from the first rep of a set to the last, rests between its clusters and both sides where there are two. */
function workSeconds(set: PlannedSet, role: Role): ExactRange {
	const seconds = addRanges(timeOfWork(set, role), restsInside(set))
	return set.eachSide ? times(seconds, exact(2)) : seconds
}

function timeOfWork({ work, tempo }: PlannedSet, role: Role): ExactRange {
	switch (work.kind) {
		case 'carry':
			return times(work.metres, role === 'conditioning' ? secondsPerMetreOfConditioning : secondsPerMetre)
		case 'reps-in-time':
			return work.seconds
		default:
			return underTension(work, tempo) ?? nothing
	}
}

/** The rests between the clusters of a set. */
function restsInside({ work, clusters }: Pick<PlannedSet, 'work' | 'clusters'>): ExactRange {
	if (work.kind !== 'reps' || clusters === undefined) return nothing
	const rests = (reps: number) => clusters.restSeconds.mul(exact(Math.max(Math.ceil(reps / clusters.reps) - 1, 0)))
	return { from: rests(work.reps.from), to: rests(work.reps.to) }
}

/** The lengths of sessions are asked for again and again; nobody changes a list of items. */
const known = new WeakMap<readonly PlannedItem[], ExactRange>()

/**
 * Estimated length of a session in seconds: every set's work and the rest after it, none after the last set. Items that go back to back
 * are done in rounds, with the rest of the round's last item. Low end without the optional sets, high end with them.
 */
export function sessionSeconds(items: readonly PlannedItem[]): ExactRange {
	const length = known.get(items) ?? workOutLength(items)
	known.set(items, length)
	return length
}

function workOutLength(items: readonly PlannedItem[]): ExactRange {
	const all = lengthOf(inOrderDone(items, 'to'))
	const hasOptional = items.some(({ sets }) => sets.some(set => set.optional))
	return hasOptional ? { from: lengthOf(inOrderDone(items, 'from')).from, to: all.to } : all
}

function lengthOf(groups: readonly (readonly DoneSet[])[]): ExactRange {
	let total = nothing
	let lastRest = zero
	for (const { set, role, rests } of groups.flat()) {
		lastRest = rests ? set.restSeconds : zero
		total = addRanges(addRanges(total, workSeconds(set, role)), { from: lastRest, to: lastRest })
	}
	return eachEnd(total, end => end.sub(lastRest))
}

interface DoneSet {
	readonly set: PlannedSet
	readonly role: Role
	/** Is there a rest after it, or does the next item of the round follow at once? */
	readonly rests: boolean
}

/** The sets of each item or back-to-back group. */
function inOrderDone(items: readonly PlannedItem[], end: 'from' | 'to'): readonly (readonly DoneSet[])[] {
	const groups: Omit<DoneSet, 'rests'>[][][] = []
	for (const { item, role, sets } of items) {
		const done = sets.filter(set => end === 'to' || !set.optional).map(set => ({ set, role }))
		const above = groups.at(-1)
		if (item.withItemAbove && above !== undefined) above.push(done)
		else groups.push([done])
	}
	return groups.map(group => {
		const rounds = Math.max(...group.map(sets => sets.length))
		return Array.from({ length: rounds }, (_, round) => {
			const sets = group.flatMap(each => each[round] ?? [])
			return sets.map((one, index): DoneSet => ({ ...one, rests: index === sets.length - 1 }))
		}).flat()
	})
}
