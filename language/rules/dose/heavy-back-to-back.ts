import { decimal } from '../../compute/exact.ts'
import { type LimitsOf, limitsFor } from '../../compute/limits.ts'
import type { Block, Lifter } from '../../model/definitions.ts'
import type { Finding, RelatedPlace } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import { titleOfItem } from '../common/exposures.ts'
import { groupedBy } from '../common/groups.ts'
import { type HeavyPair, heavyPairs } from '../common/heavy-pairs.ts'
import { blockSessions, type DatedSession, lifterSessions, type PlacedSession } from '../common/placed-sessions.ts'
import { headOf, placeOfItem } from '../common/places.ts'
import { findingsOn, type PlanFinding } from '../common/run-findings.ts'
import { calendarWeeksInWords, weeksInWords } from '../common/weeks.ts'
import { counted } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import page from './heavy-back-to-back.md'

export const heavyBackToBack: Rule = {
	code: 'heavy-back-to-back',
	area: 'dose',
	level: 'warning',
	summary: 'A heavy hinge stands on the day before or after a heavy squat, or a hinge that may stand once a week only.',
	source: 'the `heavy hinge and squat … apart … days` of the limits',
	fix: 'none',
	since: '0.1.0',
	page,
	check: {
		block: checkBlock,
		plan: (plan, programme) => findingsOn(plan, programme, ofLifter),
	},
}

function pairsOf<S extends PlacedSession>(
	sessions: readonly S[],
	whose: LimitsOf,
	programme: Programme,
): readonly HeavyPair<S>[] {
	const { heavy, heavyHingeAndSquat, estimator } = limitsFor(whose, programme)
	const apart = heavyHingeAndSquat?.value.apartDays
	if (heavy === undefined || apart === undefined) return []
	return heavyPairs(sessions, heavy.value.fromPercent, apart, estimator?.value ?? 'epley')
}

function inBlock(block: Block, programme: Programme): readonly HeavyPair<PlacedSession>[] {
	return programme.derived(block, workOutInBlock)
}

function workOutInBlock(block: Block, programme: Programme): readonly HeavyPair<PlacedSession>[] {
	return pairsOf(blockSessions(block, programme), block, programme)
}

function checkBlock(block: Block, programme: Programme): Finding[] {
	const signature = ({ earlier, later, gap }: HeavyPair<PlacedSession>) =>
		`${earlier.item.item.span.start} ${later.item.item.span.start} ${gap}`
	return groupedBy(inBlock(block, programme), signature).map(same => {
		const [pair] = same
		const { earlier, later } = pair
		const weeks = weeksInWords(same.map(one => one.later.session.runWeek))
		return {
			span: headOf(later.item.item),
			...said(pair, `in ${weeks}`, block, programme),
			related: [
				{ definition: block, span: headOf(earlier.item.item), message: 'The day before it.' },
				...limitPlace(block, programme),
			],
		}
	})
}

function ofLifter(lifter: Lifter, programme: Programme): readonly PlanFinding[] {
	const name = lifter.name.text
	const pairs = pairsOf(lifterSessions(lifter, programme), name, programme).filter(pair => !isInBlock(pair, programme))
	const keyOf = ({ session, item }: HeavyPair<DatedSession>['later']) =>
		`${session.plan.name.text} ${session.run.monday} ${session.session.name.text} ${item.movementName.text}`
	return groupedBy(pairs, pair => `${keyOf(pair.earlier)} ${keyOf(pair.later)}`).map((same): PlanFinding => {
		const [pair] = same
		const { plan, run } = pair.later.session
		const when = `in ${calendarWeeksInWords(same.map(one => one.later.session.monday))}`
		const places = [pair.earlier, pair.later].map(({ item, session }) =>
			placeOfItem(item, session, `${titleOfItem(item)}, ${session.dayText}.`),
		)
		return {
			plan,
			finding: {
				span: run.run.header,
				...said(pair, when, name, programme),
				related: [...places, ...limitPlace(name, programme)],
			},
		}
	})
}

function isInBlock({ earlier, later }: HeavyPair<DatedSession>, programme: Programme): boolean {
	if (earlier.session.run !== later.session.run) return false
	const isSame = (a: PlacedSession, b: PlacedSession) =>
		a.session.name.text === b.session.name.text && a.blockWeek === b.blockWeek
	return inBlock(later.session.run.block, programme).some(
		pair => isSame(pair.earlier.session, earlier.session) && isSame(pair.later.session, later.session),
	)
}

function said(
	{ earlier, later, gap }: HeavyPair<PlacedSession>,
	when: string,
	whose: LimitsOf,
	programme: Programme,
): Pick<Finding, 'message' | 'source'> {
	const { heavy, heavyHingeAndSquat: limit } = limitsFor(whose, programme)
	const mark = heavy ? decimal(heavy.value.fromPercent) : ''
	const describe = ({ item, session, kind }: typeof earlier) =>
		`${titleOfItem(item)} on ${session.dayText.split(' ')[0]} (${kind === 'once-a-week-hinge' ? 'a hinge that stands once a week at most' : `${mark}% or more`})`
	const origin = limit?.origin ?? 'common practice'
	return {
		message: `${describe(earlier)} and ${describe(later)} are ${counted(gap, 'day')} apart ${when}; the limit is ${counted(limit?.value.apartDays ?? 0, 'day')} (${origin}). Move one of them, put both on one day, or make one lighter.`,
		source: origin,
	}
}

function limitPlace(whose: LimitsOf, programme: Programme): RelatedPlace[] {
	const limit = limitsFor(whose, programme).heavyHingeAndSquat
	return limit ? [{ definition: limit.definition, span: limit.span, message: 'The limit stands here.' }] : []
}
