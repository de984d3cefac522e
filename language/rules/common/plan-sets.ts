import { alikeSets } from '../../compute/volume/alike-sets.ts'
import type { Plan } from '../../model/definitions.ts'
import type { RelatedPlace } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { ScheduledItem, ScheduledSet } from '../../model/schedule.ts'
import { type DatedSession, planSessions } from './placed-sessions.ts'
import { distinctPlaces, placeOfItem } from './places.ts'
import { weeksInWords } from './weeks.ts'

/** An item of a plan on a date. */
export interface DatedItem {
	readonly session: DatedSession
	readonly item: ScheduledItem
}

/** A set of a plan on a date. */
export interface DatedSet extends DatedItem {
	readonly set: ScheduledSet
}

/** Every item of a plan that has sets, by date. */
export function itemsOf(plan: Plan, programme: Programme): readonly DatedItem[] {
	return planSessions(plan, programme).flatMap(session =>
		session.items.filter(item => item.sets.length > 0).map(item => ({ session, item })),
	)
}

/** Every item that a milestone of a plan may move on to, as it would stand there, by date. */
export function nextItemsOf(plan: Plan, programme: Programme): readonly DatedItem[] {
	return itemsOf(plan, programme).flatMap(({ session, item }) =>
		item.item.milestones.flatMap(({ then }): DatedItem[] => {
			if (then.kind !== 'move' || item.role !== item.item.role) return []
			const movement = programme.find('movement', then.movement.text)
			return [{ session, item: { ...item, movementName: then.movement, movement } }]
		}),
	)
}

/** The sets of a plan's working items, by date; of those that are done alike one. */
export function workingSetsOf(plan: Plan, programme: Programme): readonly DatedSet[] {
	return itemsOf(plan, programme).flatMap(one =>
		one.item.working ? alikeSets(one.item.sets).map(({ set }) => ({ ...one, set })) : [],
	)
}

/** "weeks 1-3": weeks of the block that the run runs. */
export function runWeeks(items: readonly DatedItem[]): string {
	return weeksInWords(items.map(one => one.session.runWeek))
}

/** Where items are written, each place once. */
export function itemPlaces(items: readonly DatedItem[], message: string): readonly RelatedPlace[] {
	return distinctPlaces(items.map(one => placeOfItem(one.item, one.session, message)))
}
