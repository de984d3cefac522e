import type { Block, Plan, Session } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import { groupedBy } from '../common/groups.ts'
import { titleOfSession } from '../common/moves.ts'
import { blockSessions, type PlacedSession, planSessions } from '../common/placed-sessions.ts'
import { weeksInWords } from '../common/weeks.ts'
import type { Rule } from '../rule.ts'
import page from './day-clash.md'

export const dayClash: Rule = {
	code: 'day-clash',
	area: 'shape',
	level: 'warning',
	summary: 'Two sessions of a block fall on one day.',
	source: 'common practice',
	fix: 'none',
	since: '0.1.0',
	page,
	check: { block: checkBlock, plan: checkPlan },
}

/** Two sessions that both have something to do at one time of a day. A session that says no day at all falls on none. */
interface Clash<S extends PlacedSession> {
	readonly first: S
	readonly second: S
}

function clashes<S extends PlacedSession>(sessions: readonly S[]): readonly Clash<S>[] {
	const busy = sessions.filter(({ items, placed }) => placed !== undefined && items.some(item => item.sets.length > 0))
	// One in the evening and one that is not are meant to be two.
	return groupedBy(busy, session => `${session.dayKey} ${session.placed?.part}`).flatMap(([first, ...others]) =>
		others.map(second => ({ first, second })),
	)
}

function clashesIn(block: Block, programme: Programme): readonly Clash<PlacedSession>[] {
	return programme.derived(block, workOutClashes)
}

function workOutClashes(block: Block, programme: Programme): readonly Clash<PlacedSession>[] {
	return clashes(blockSessions(block, programme))
}

function checkBlock(block: Block, programme: Programme): Finding[] {
	return groupedBy(clashesIn(block, programme), keyOf).map(same => {
		const [{ first, second }] = same
		const weeks = weeksInWords(same.map(one => one.second.runWeek))
		return {
			span: second.session.header,
			message: messageOf(first.session, second.session, second.dayText, weeks),
			source: 'common practice',
			related: [{ definition: block, span: first.session.header, message: 'The other session of that day.' }],
		}
	})
}

/** What the plan's days and moves bring together. */
function checkPlan(plan: Plan, programme: Programme): Finding[] {
	const byRun = groupedBy(planSessions(plan, programme), session => session.run.monday)
	return byRun.flatMap(sessions => {
		const { run } = sessions[0]
		const inBlock = new Set(clashesIn(run.block, programme).map(keyOf))
		const own = clashes(sessions).filter(clash => !inBlock.has(keyOf(clash)))
		return groupedBy(own, keyOf).map((same): Finding => {
			const [{ first, second }] = same
			const weeks = weeksInWords(same.map(one => one.second.runWeek))
			return {
				span: run.run.header,
				message: messageOf(first.session, second.session, second.scheduled.weekday, weeks),
				source: 'common practice',
				related: [first, second].map(({ session }) => ({
					definition: run.block,
					span: session.header,
					message: `${titleOfSession(session)} stands here.`,
				})),
			}
		})
	})
}

function keyOf({ first, second }: Clash<PlacedSession>): string {
	return `${first.session.name.text} ${second.session.name.text}`
}

function messageOf(first: Session, second: Session, day: string, weeks: string): string {
	return `${titleOfSession(first)} and ${titleOfSession(second)} both fall on ${day} in ${weeks}: one session a day is usual (common practice). Move one of them, make them one, or write "evening" behind the day of the later one.`
}
