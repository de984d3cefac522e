import { exact } from '../../compute/exact.ts'
import { countText, rangeText } from '../../compute/loads/wording.ts'
import type { Work } from '../../model/prescription.ts'
import type { CountRange, ExactRange } from '../../model/quantities.ts'

/** "4 x 5", "3-4 x 30 s", "1 x 12 to failure": a dose as the formatter writes it. */
export function doseText(sets: CountRange, work: Work): string {
	return `${countText(sets)} x ${workText(work)}`
}

function workText(work: Work): string {
	switch (work.kind) {
		case 'reps':
			return `${countText(work.reps)}${work.toFailure ? ' to failure' : ''}${work.orMore ? ' or more' : ''}`
		case 'hold':
			return `${rangeText(work.seconds)} s`
		case 'carry':
			return `${rangeText(work.metres)} m${work.forTime ? ' for time' : ''}`
		case 'reps-in-time':
			return `${rangeText(work.seconds)} s for reps`
		case 'time':
			return `${rangeText({ from: work.seconds.from.div(exact(60)), to: work.seconds.to.div(exact(60)) })} min`
	}
}

/** A range brought inside another. */
export function clampedCount(range: CountRange, into: CountRange): CountRange {
	const clamp = (value: number) => Math.min(Math.max(value, into.from), into.to)
	return { from: clamp(range.from), to: clamp(range.to) }
}

export function clamped(range: ExactRange, into: ExactRange): ExactRange {
	const clamp = (value: ExactRange['from']) =>
		value.compare(into.from) < 0 ? into.from : value.compare(into.to) > 0 ? into.to : value
	return { from: clamp(range.from), to: clamp(range.to) }
}
