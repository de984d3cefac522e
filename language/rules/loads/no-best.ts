import { schedulePlan } from '../../compute/schedule.ts'
import type { Lifter, Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { ScheduledItem, ScheduledRun, ScheduledSession, ScheduledSet } from '../../model/schedule.ts'
import { titleOfItem } from '../common/exposures.ts'
import { groupedBy } from '../common/groups.ts'
import { distinctPlaces, placeOfItem } from '../common/places.ts'
import { titleOf } from '../common/titles.ts'
import { weeksInWords } from '../common/weeks.ts'
import { inWords } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import page from './no-best.md'

export const noBest: Rule = {
	code: 'no-best',
	area: 'loads',
	level: 'error',
	summary: 'A percent, a base or a rep max has no best to be taken of.',
	source: "the lifter's bests",
	fix: 'none',
	since: '0.1.0',
	page,
	check: { plan: checkPlan },
}

/** A set whose load waits for a best or a base that nobody has written down. */
interface Loadless {
	readonly session: ScheduledSession
	readonly item: ScheduledItem
	readonly set: ScheduledSet
	/** The lift whose best, or base, is missing. */
	readonly lift: string
}

function checkPlan(plan: Plan, programme: Programme): Finding[] {
	const { lifter, runs, sessions } = schedulePlan(plan, programme)
	if (lifter === undefined) return []
	// What one best lacks in several blocks is one message, on the first run that needs it.
	const loadless = runs.flatMap(run => sessions.filter(session => session.run === run).flatMap(loadlessIn))
	return groupedBy(loadless, one => `${one.set.computed.missing} ${one.lift}`).map(same =>
		findingOf(same, plan, lifter, programme),
	)
}

/** An effort alone gives no load and a reason, no error; a share of the top set waits for another set, which is reported itself. */
function loadlessIn(session: ScheduledSession): readonly Loadless[] {
	// A name that stands for no movement is reported as that.
	return session.items.flatMap(item =>
		// Warm-ups that the tool makes go without numbers where a lift has no best yet.
		(item.movement && item.from !== 'computed-warm-up' ? item.sets : [])
			.filter(({ load, computed }) => {
				const asked = (load.kind === 'percent' && load.of !== 'top-set') || load.kind === 'rm'
				return asked && (computed.missing === 'best' || computed.missing === 'base')
			})
			.map(set => ({ session, item, set, lift: item.movement?.percentOf?.movement.text ?? item.movementName.text })),
	)
}

function findingOf(same: readonly [Loadless, ...Loadless[]], plan: Plan, lifter: Lifter, programme: Programme): Finding {
	const [{ set, lift, session }] = same
	const { run } = session
	const who = titleOf('lifter', lifter.name.text, programme)
	const what = titleOf('movement', lift, programme)
	const movements = [...new Set(same.map(one => titleOfItem(one.item)))]
	const byBlock = groupedBy(same, one => one.session.run.block.name.text)
	const weeks = byBlock.map(ones => {
		const ofBlock = byBlock.length > 1 ? ` of ${ones[0].session.run.block.name.text}` : ''
		return `${weeksInWords(ones.map(one => one.session.runWeek))}${ofBlock}`
	})
	const lost = `The loads of ${inWords(movements)} in ${inWords(weeks)} cannot be worked out.`
	return {
		span: run.run.header,
		message: `${reasonOf(set, lift, what, who, run, lifter)} ${lost}`,
		related: [
			...distinctPlaces(same.map(one => placeOfItem(one.item, { run: one.session.run, plan }, 'Its load is taken of that.'))),
			{ definition: lifter, span: lifter.header, message: 'The bests of this lifter.' },
		],
	}
}

function reasonOf(set: ScheduledSet, lift: string, what: string, who: string, run: ScheduledRun, lifter: Lifter): string {
	const { computed } = set
	if (computed.missing === 'base') return `${computed.reason ?? ''} Write one: base ${lift} 92.5%.`
	const bests = lifter.bests.filter(best => best.movement.text === lift)
	const first = bests.flatMap(best => best.on ?? []).sort()[0]
	if (bests.length === 0) return `${who} has no best of ${what}. Write one: best ${lift} … kg on a day up to ${run.firstDay}.`
	if (first !== undefined && first > run.firstDay && bests.every(best => best.on !== undefined && best.on > run.firstDay)) {
		return `${who} has no best of ${what} dated on or before ${run.firstDay}, the first day of this block; the first one is of ${first}.`
	}
	return computed.reason ?? ''
}
