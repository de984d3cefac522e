import { type LimitsOf, limitsFor } from '../../compute/limits.ts'
import type { Block, Lifter } from '../../model/definitions.ts'
import type { Finding, RelatedPlace } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Estimator } from '../../model/vocabulary.ts'
import { type ClosePair, closePairs } from '../common/close-exposures.ts'
import { groupedBy, inTurn } from '../common/groups.ts'
import { movesInBlock, movesInPlan, titleOfSession } from '../common/moves.ts'
import { originOf } from '../common/origins.ts'
import { blockSessions, type DatedSession, lifterSessions, type PlacedSession } from '../common/placed-sessions.ts'
import { headOf, placeOfItem } from '../common/places.ts'
import { soundOnes } from '../common/proposals.ts'
import { findingsOn, type PlanFinding } from '../common/run-findings.ts'
import { calendarWeeksInWords, weeksInWords } from '../common/weeks.ts'
import { counted } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import page from './too-close.md'

const code = 'too-close'

export const tooClose: Rule = {
	code,
	area: 'dose',
	level: 'warning',
	summary: 'Two sessions of a movement are closer than its definition asks for.',
	source: 'the `apart … days` of the movement',
	fix: 'to confirm',
	since: '0.1.0',
	page,
	check: {
		block: checkBlock,
		plan: (plan, programme) => findingsOn(plan, programme, ofLifter),
	},
}

function pairsInBlock(block: Block, programme: Programme): readonly ClosePair<PlacedSession>[] {
	return programme.derived(block, workOutPairs)
}

function workOutPairs(block: Block, programme: Programme): readonly ClosePair<PlacedSession>[] {
	return closePairs(blockSessions(block, programme), estimatorOf(block, programme))
}

function checkBlock(block: Block, programme: Programme): Finding[] {
	const pairs = pairsInBlock(block, programme)
	const signature = ({ movement, earlier, later, gap }: ClosePair<PlacedSession>) =>
		`${movement.name.text} ${earlier.session.dayText} ${later.session.dayText} ${gap}`
	return groupedBy(pairs, signature).map(same => {
		const [pair] = same
		const { earlier, later } = pair
		const isNextWeek = later.session.runWeek !== earlier.session.runWeek
		const days = `on ${earlier.session.dayText} and again on ${isNextWeek ? 'the ' : ''}${later.session.dayText}${isNextWeek ? ' after' : ''}`
		const when = weeksInWords(same.map(one => one.earlier.session.runWeek))
		const first = earlier.items[0]?.item.item
		return {
			span: later.items[0] ? headOf(later.items[0].item.item) : block.header,
			...said(pair, days, isNextWeek ? `after ${when}` : when, programme),
			related: [
				...(first && first !== later.items[0]?.item.item
					? [{ definition: block, span: headOf(first), message: 'The session before it.' }]
					: []),
				factPlace(pair),
			],
			corrections: soundOnes(code, block, programme, () =>
				inTurn(movesInBlock(later.session.session, block), movesInBlock(earlier.session.session, block)),
			),
		}
	})
}

/** What the blocks alone do not show: days that the plan gives, and the borders of blocks and plans. */
function ofLifter(lifter: Lifter, programme: Programme): readonly PlanFinding[] {
	const estimator = estimatorOf(lifter.name.text, programme)
	const pairs = closePairs(lifterSessions(lifter, programme), estimator).filter(pair => !isInBlock(pair, programme))
	const keyOf = ({ plan, run, session }: DatedSession) => `${plan.name.text} ${run.monday} ${session.name.text}`
	const signature = ({ movement, earlier, later, gap }: ClosePair<DatedSession>) =>
		`${movement.name.text} ${keyOf(earlier.session)} ${keyOf(later.session)} ${gap}`
	return groupedBy(pairs, signature).map((same): PlanFinding => {
		const [pair] = same
		const { earlier, later } = pair
		const { plan, run } = later.session
		const days = `on ${earlier.session.dayText} and again on ${later.session.dayText}`
		const others = same.slice(1).map(one => one.later.session.monday)
		const when = others.length === 0 ? '' : `also in ${calendarWeeksInWords(others)}`
		return {
			plan,
			finding: {
				span: run.run.header,
				...said(pair, days, when, programme),
				related: [...[earlier, later].flatMap(({ items, session }) => placesOf(items, session)), factPlace(pair)],
				corrections: soundOnes(code, plan, programme, () => movesInPlan(later.session, plan, programme)),
			},
		}
	})
}

function placesOf(items: ClosePair<DatedSession>['later']['items'], session: DatedSession): RelatedPlace[] {
	return items
		.slice(0, 1)
		.map(one => placeOfItem(one.item, one.session, `${titleOfSession(session.session)}, ${session.dayText}.`))
}

/** The same sessions of the same weeks of one block, closer than they should be whatever the plan: it is said there. */
function isInBlock({ movement, earlier, later }: ClosePair<DatedSession>, programme: Programme): boolean {
	if (earlier.session.run !== later.session.run) return false
	const isSame = (a: PlacedSession, b: PlacedSession) =>
		a.session.name.text === b.session.name.text && a.blockWeek === b.blockWeek
	return pairsInBlock(later.session.run.block, programme).some(
		pair =>
			pair.movement === movement && isSame(pair.earlier.session, earlier.session) && isSame(pair.later.session, later.session),
	)
}

function said(
	{ movement, apartDays, gap }: ClosePair<PlacedSession>,
	days: string,
	when: string,
	programme: Programme,
): Pick<Finding, 'message' | 'source'> {
	const title = movement.title?.text ?? movement.name.text
	const origin = originOf(movement, programme)
	const later = `${counted(gap, 'day')} later${when === '' ? '' : ` (${when})`}`
	return {
		message: `${title} is trained ${days}, ${later}; from one to the next it asks for ${counted(apartDays, 'day')} at least (${origin}). Move one of them, or drop it there.`,
		source: origin,
	}
}

function factPlace({ movement }: ClosePair<PlacedSession>): RelatedPlace {
	return { definition: movement, span: movement.apartDays?.span ?? movement.header, message: 'The days apart stand here.' }
}

function estimatorOf(whose: LimitsOf, programme: Programme): Estimator {
	return limitsFor(whose, programme).estimator?.value ?? 'epley'
}
