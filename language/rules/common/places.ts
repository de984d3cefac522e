import type { Item } from '../../model/definitions.ts'
import type { RelatedPlace } from '../../model/problem.ts'
import type { ScheduledItem } from '../../model/schedule.ts'
import type { Span } from '../../model/text.ts'
import type { DatedSession } from './placed-sessions.ts'

/** "main deadlift": the words that an item begins with. */
export function headOf(item: Item): Span {
	return { start: item.span.start, end: item.movement.span.end }
}

/** Where an item of a plan is written: in its block, or in the run that adds it. */
export function placeOfItem(
	item: ScheduledItem,
	{ run, plan }: Pick<DatedSession, 'run' | 'plan'>,
	message: string,
): RelatedPlace {
	if (item.changedBy === 'add') return { definition: plan, span: headOf(item.item), message }
	// A swapped item's new name stands in the plan; its place in the block is that of the old one.
	const end = (item.insteadOf ?? item.item.movement).span.end
	return { definition: run.block, span: { start: item.item.span.start, end }, message }
}

/** Places once each: several sets or weeks of an item are one. */
export function distinctPlaces(places: readonly RelatedPlace[]): readonly RelatedPlace[] {
	const key = ({ definition, span }: RelatedPlace) => `${definition.kind} ${definition.name.text} ${span.start}`
	const first = new Map<string, RelatedPlace>()
	for (const place of places) if (!first.has(key(place))) first.set(key(place), place)
	return [...first.values()]
}
