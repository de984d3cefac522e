import { sessionSeconds } from '../../compute/duration.ts'
import { decimal, exact } from '../../compute/exact.ts'
import { type Limit, limitsFor } from '../../compute/limits.ts'
import type { Block, Plan } from '../../model/definitions.ts'
import type { Finding, RelatedPlace } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Exact } from '../../model/quantities.ts'
import { groupedBy } from '../common/groups.ts'
import { titleOfSession } from '../common/moves.ts'
import { blockSessions, type PlacedSession, planSessions } from '../common/placed-sessions.ts'
import { weeksInWords } from '../common/weeks.ts'
import type { Rule } from '../rule.ts'
import page from './session-too-long.md'

export const sessionTooLong: Rule = {
	code: 'session-too-long',
	area: 'shape',
	level: 'warning',
	summary: 'A session takes longer than the limit, even at its shortest.',
	source: 'the `session at most … min` of the limits',
	fix: 'none',
	since: '0.1.0',
	page,
	check: { block: checkBlock, plan: checkPlan },
}

interface LongSession<S extends PlacedSession> {
	readonly session: S
	/** Of the low end. */
	readonly seconds: Exact
}

function longOnes<S extends PlacedSession>(sessions: readonly S[], limit: Limit<Exact>): readonly LongSession<S>[] {
	return sessions
		.map(session => ({ session, seconds: sessionSeconds(session.items).from }))
		.filter(({ seconds }) => seconds.compare(limit.value) > 0)
}

function checkBlock(block: Block, programme: Programme): Finding[] {
	const limit = limitsFor(block, programme).sessionSeconds
	if (limit === undefined) return []
	const long = longOnes(blockSessions(block, programme), limit)
	return groupedBy(long, one => one.session.session.name.text).map(same => ({
		span: same[0].session.session.header,
		...said(same, limit),
		related: [limitPlace(limit)],
	}))
}

/** What a plan's changes make longer, and what is too long for this lifter alone. */
function checkPlan(plan: Plan, programme: Programme): Finding[] {
	const limit = limitsFor(plan.lifter.text, programme).sessionSeconds
	if (limit === undefined) return []
	const long = longOnes(planSessions(plan, programme), limit).filter(({ session }) => {
		const { block } = session.run
		const ofBlock = limitsFor(block, programme).sessionSeconds
		const inBlock = blockSessions(block, programme).filter(other => isSame(other, session))
		return ofBlock === undefined || longOnes(inBlock, ofBlock).length === 0
	})
	return groupedBy(long, one => `${one.session.run.monday} ${one.session.session.name.text}`).map(same => {
		const { run, session } = same[0].session
		return {
			span: run.run.header,
			...said(same, limit),
			related: [{ definition: run.block, span: session.header, message: 'The session stands here.' }, limitPlace(limit)],
		}
	})
}

function isSame(a: PlacedSession, b: PlacedSession): boolean {
	return a.session.name.text === b.session.name.text && a.blockWeek === b.blockWeek
}

function said(same: readonly [LongSession<PlacedSession>, ...LongSession<PlacedSession>[]], limit: Limit<Exact>) {
	const longest = same.reduce((most, one) => (one.seconds.compare(most.seconds) > 0 ? one : most))
	const weeks = weeksInWords(same.map(one => one.session.runWeek))
	const varies = same.some(one => !one.seconds.equals(longest.seconds))
	const at = varies ? ` (the longest in week ${longest.session.runWeek})` : ''
	const title = titleOfSession(longest.session.session)
	return {
		message: `${title} takes ${minutes(longest.seconds)} min or more in ${weeks}${at}, by its sets, tempos and rests; the limit is ${minutes(limit.value)} min (${limit.origin}). Shorten the rests, put items back to back, or move one to another day.`,
		source: limit.origin,
	}
}

function minutes(seconds: Exact): string {
	return decimal(seconds.div(exact(60)), 1)
}

function limitPlace(limit: Limit<Exact>): RelatedPlace {
	return { definition: limit.definition, span: limit.span, message: 'The limit stands here.' }
}
