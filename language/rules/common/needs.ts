import { exact, smaller, zero } from '../../compute/exact.ts'
import type { Breakdown, Movement, Need } from '../../model/definitions.ts'
import type { Exact } from '../../model/quantities.ts'
import { links } from '../../model/vocabulary.ts'

/** A need that a week does not meet. */
export interface Shortage {
	readonly need: Need
	/** The week has fewer sessions where this is less than the need's own amount: then it asks for all of them. */
	readonly needed: Exact
	readonly found: Exact
}

/** As much of a session as needs ask for. */
export interface SessionWork {
	readonly items: readonly {
		readonly movement: Movement | undefined
		readonly working: boolean
		readonly sets: readonly { readonly optional: boolean }[]
	}[]
}

/** Does a movement answer a breakdown: named by it, or, where it names none, by its first link? The lift that fails never does. */
export function answers(movement: Movement, breakdown: Breakdown, failing: ReadonlySet<string>): boolean {
	const name = movement.name.text
	if (failing.has(name)) return false
	if (breakdown.answeredBy.length > 0) return breakdown.answeredBy.some(answer => answer.text === name)
	return movement.trains?.value[0] !== undefined && movement.trains.value[0] === breakdown.weakLinks?.value[0]
}

/** The needs of a breakdown that a week's sessions do not meet, at the low end of what they leave open. */
export function shortages(
	breakdown: Breakdown,
	failing: ReadonlySet<string>,
	sessions: readonly SessionWork[],
): readonly Shortage[] {
	return breakdown.needs.flatMap((need): Shortage[] => {
		const amounts = sessions.map(session => amountIn(session, need, breakdown, failing))
		const found =
			need.unit === 'sets'
				? amounts.reduce((sum, amount) => sum.add(amount), zero)
				: exact(amounts.filter(amount => amount.compare(zero) > 0).length)
		const needed =
			need.unit === 'sets'
				? need.amount
				: smaller(need.amount, exact(sessions.filter(session => session.items.some(item => item.working)).length))
		return found.compare(needed) < 0 ? [{ need, needed, found }] : []
	})
}

/** Sets of a session that count for a need. */
function amountIn(session: SessionWork, need: Need, breakdown: Breakdown, failing: ReadonlySet<string>): Exact {
	return session.items.reduce((sum, { movement, sets, working }) => {
		if (!working || !movement || !answers(movement, breakdown, failing)) return sum
		return sum.add(exact(sets.filter(set => !set.optional).length).mul(shareOf(movement, need, breakdown)))
	}, zero)
}

/** What one set of an answering movement counts for a need. */
function shareOf(movement: Movement, need: Need, breakdown: Breakdown): Exact {
	if (!(links as readonly string[]).includes(need.what)) {
		return movement.muscles.find(({ muscle }) => muscle === need.what)?.share ?? zero
	}
	// Where a breakdown asks for both links, each movement counts for its own.
	const asksForBoth = links.every(link => breakdown.needs.some(other => other.what === link))
	return asksForBoth && movement.trains?.value[0] !== need.what ? zero : exact(1)
}
