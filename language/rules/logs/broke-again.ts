import { decimal, exact, hundred } from '../../compute/exact.ts'
import { isInForce } from '../../compute/failing-lifts.ts'
import { limitsFor } from '../../compute/limits.ts'
import { referenceFor } from '../../compute/loads/reference.ts'
import { type DatedEntry, entriesOf } from '../../compute/logged-sessions.ts'
import { inUnit } from '../../compute/mass.ts'
import type { Fails, Lifter, LoggedSet } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Exact } from '../../model/quantities.ts'
import type { Estimator } from '../../model/vocabulary.ts'
import { titleOf } from '../common/titles.ts'
import type { Rule } from '../rule.ts'
import page from './broke-again.md'

/** The new threshold is the next of these steps under what broke. */
const step = exact('2.5')

export const brokeAgain: Rule = {
	code: 'broke-again',
	area: 'logs',
	level: 'info',
	summary: 'Position was lost in two sessions in a row at or under the percent from which it is said to be.',
	source: 'the `above` of the `fails` line of the lifter; two sessions are common practice',
	fix: 'to confirm',
	since: '0.1.0',
	page,
	check: { lifter: checkLifter },
}

/** A session of the lift; `broke` is the lightest set that lost position in that way, if one did. */
interface Done {
	readonly logged: DatedEntry
	readonly broke: { readonly set: LoggedSet; readonly percent: Exact } | undefined
}

function checkLifter(lifter: Lifter, programme: Programme): Finding[] {
	const estimator = limitsFor(lifter.name.text, programme).estimator?.value ?? 'epley'
	return lifter.fails.flatMap(fails => check(fails, lifter, estimator, programme))
}

function check(fails: Fails, lifter: Lifter, estimator: Estimator, programme: Programme): Finding[] {
	const { above } = fails
	if (above === undefined) return []
	const done = entriesOf(lifter, programme)
		.filter(({ on }) => isInForce(fails, on))
		.flatMap(logged => {
			const sets = logged.entry.lifts.filter(one => one.movement.text === fails.movement.text).flatMap(one => one.sets)
			return sets.length === 0 ? [] : [{ logged, broke: lightestBroken(sets, logged, fails, lifter, estimator, programme) }]
		})
	const again = lastPair(done, above)
	if (again === undefined) return []
	const [first, second] = again
	const lightest = first.percent.compare(second.percent) <= 0 ? first.percent : second.percent
	const lowered = below(lightest)
	const title = titleOf('movement', fails.movement.text, programme)
	return [
		{
			span: fails.span,
			message: `${title} lost position at ${decimal(first.percent, 1)}% on ${first.logged.on} and at ${decimal(second.percent, 1)}% on ${second.logged.on}, two sessions in a row; ${titleOf('lifter', lifter.name.text, programme)} is said to lose it above ${decimal(above)}% (lifter ${lifter.name.text}). The limit is lower than it says here.`,
			source: `lifter ${lifter.name.text}`,
			related: again.map(one => ({
				definition: one.logged.log,
				span: one.set.span,
				message: `Position was lost here, at ${decimal(one.percent, 1)}%.`,
			})),
			corrections:
				lowered.compare(0) > 0
					? [{ title: `Lower it to ${decimal(lowered)}%`, edits: [{ span: fails.span, text: withAbove(fails, lowered) }] }]
					: [],
		},
	]
}

function lightestBroken(
	sets: readonly LoggedSet[],
	{ on }: DatedEntry,
	fails: Fails,
	lifter: Lifter,
	estimator: Estimator,
	programme: Programme,
): Done['broke'] {
	const reference = referenceFor(fails.movement.text, undefined, lifter, on, 'kg', estimator, programme)
	if ('missing' in reference) return undefined
	const broken = sets.flatMap(set => {
		if (set.brokeWith?.text !== fails.breakdown.text || set.mass === undefined || set.bodyweight) return []
		return [{ set, percent: inUnit(set.mass, 'kg').div(reference.amount).mul(hundred) }]
	})
	return broken.sort((a, b) => a.percent.compare(b.percent))[0]
}

/** The last two sessions of the lift, one after the other, that both lost position at or under the percent. */
function lastPair(done: readonly Done[], above: Exact) {
	const at = ({ logged, broke }: Done) => (broke && broke.percent.compare(above) <= 0 ? { logged, ...broke } : undefined)
	for (let index = done.length - 1; index > 0; index--) {
		const [first, second] = [at(done[index - 1]!), at(done[index]!)]
		if (first && second) return [first, second] as const
	}
	return undefined
}

/** The next step that is less. */
function below(percent: Exact): Exact {
	return percent.div(step).ceil().sub(exact(1)).mul(step)
}

function withAbove({ movement, breakdown, from, until }: Fails, above: Exact): string {
	const dates = `${from === undefined ? '' : ` from ${from}`}${until === undefined ? '' : ` until ${until}`}`
	return `fails ${movement.text} with ${breakdown.text} above ${decimal(above)}%${dates}`
}
