import { exact } from '../../compute/exact.ts'
import type { Item, Movement } from '../../model/definitions.ts'
import type { Prescription, SetGroup, Work } from '../../model/prescription.ts'
import type { Span } from '../../model/text.ts'
import { doseText } from './dose-text.ts'

/** What a correction prescribes where it puts a movement in: within its ranges, and easy (common practice). */
export interface UsualDose {
	readonly movement: Movement
	readonly sets: number
	readonly work: Work
	/** It takes a load that an effort gives. */
	readonly byEffort: boolean
	/** It takes a load, and none follows from an effort: the coach has to put it in. */
	readonly lacksLoad: boolean
	/** "3 x 30 s", "5 x 10 rir 3" */
	readonly text: string
}

const usualSets = 3
const usualReps = 8
const usualMetres = 20
const usualReserve = exact(3)

/** `undefined` where its definition does not tell whether a movement is for reps or for time. */
export function usualDose(movement: Movement): UsualDose | undefined {
	const range = movement.sets?.value
	const sets = Math.min(Math.max(usualSets, range?.from ?? 1), range?.to ?? usualSets)
	const work = usualWork(movement)
	if (work === undefined) return undefined
	const isLoaded = movement.equipment.length > 0 || movement.loadAdded
	const byEffort = isLoaded && work.kind === 'reps'
	const text = `${doseText({ from: sets, to: sets }, work)}${byEffort ? ' rir 3' : ''}`
	return { movement, sets, work, byEffort, lacksLoad: isLoaded && !byEffort, text }
}

function usualWork({ holdSeconds, carryMetres, reps, sets, pattern }: Movement): Work | undefined {
	if (holdSeconds) return { kind: 'hold', seconds: { from: holdSeconds.value.from, to: holdSeconds.value.from } }
	if (carryMetres) {
		const metres = exact(Math.min(Math.max(usualMetres, carryMetres.value.from.valueOf()), carryMetres.value.to.valueOf()))
		return { kind: 'carry', metres: { from: metres, to: metres }, forTime: false }
	}
	const isUntold = !reps && !sets && (pattern?.value === 'brace' || pattern?.value === 'carry')
	const count = Math.min(Math.max(usualReps, reps?.value.from ?? 1), reps?.value.to ?? usualReps)
	return isUntold ? undefined : { kind: 'reps', reps: { from: count, to: count }, toFailure: false, orMore: false }
}

/** The accessory as it would be read; `span` stands for the text that is not there yet. */
export function usualItem({ movement, sets, work, byEffort }: UsualDose, span: Span): Item {
	const effort: SetGroup['effort'] = byEffort
		? { scale: 'rir', value: { from: usualReserve, to: usualReserve }, atMost: false, span }
		: undefined
	const group: SetGroup = {
		span,
		dose: span,
		sets: { from: sets, to: sets },
		work,
		load: undefined,
		ramp: undefined,
		effort,
		until: undefined,
		clusters: undefined,
		tempo: undefined,
		restSeconds: undefined,
		eachSide: false,
	}
	const everyWeek: Prescription = { span, groups: [group] }
	return {
		role: 'accessory',
		movement: { text: movement.name.text, span },
		everyWeek,
		weekLines: [],
		changes: [],
		milestones: [],
		withItemAbove: false,
		notes: [],
		span,
	}
}
