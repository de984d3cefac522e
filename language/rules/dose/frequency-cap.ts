import { countsForCap, leastDays } from '../../compute/caps.ts'
import { decimal } from '../../compute/exact.ts'
import { limitsFor } from '../../compute/limits.ts'
import type { Block, FrequencyCap, Item, Lifter, Movement, Plan, Run, RunChange } from '../../model/definitions.ts'
import type { Finding, RelatedPlace } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Estimator } from '../../model/vocabulary.ts'
import { dropped, lastRunLines } from '../common/corrections.ts'
import { type Exposure, exposuresOf } from '../common/exposures.ts'
import { groupedBy } from '../common/groups.ts'
import { movesInPlan } from '../common/moves.ts'
import { originOf } from '../common/origins.ts'
import { blockSessions, type DatedSession, lifterSessions, type PlacedSession } from '../common/placed-sessions.ts'
import { distinctPlaces, placeOfItem } from '../common/places.ts'
import { type Proposal, soundOnes } from '../common/proposals.ts'
import { findingsOn, type PlanFinding } from '../common/run-findings.ts'
import { withRunChanges } from '../common/trial-plans.ts'
import { calendarWeeksInWords, weeksInWords } from '../common/weeks.ts'
import { counted, inWords } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import page from './frequency-cap.md'

export const frequencyCap: Rule = {
	code: 'frequency-cap',
	area: 'dose',
	level: 'warning',
	summary: 'A movement is trained in more sessions of a week than its definition allows.',
	source: 'the `at most … sessions a week` of the movement',
	fix: 'to confirm',
	since: '0.1.0',
	page,
	check: {
		block: (block, programme) => inBlock(block, programme).map(one => findingInBlock(one, block, programme)),
		plan: (plan, programme) => findingsOn(plan, programme, ofLifter),
	},
}

/** A movement that is trained too often in a week. */
interface Excess<S extends PlacedSession> {
	readonly movement: Movement
	readonly cap: FrequencyCap
	/** Of the week, in order; more of them than the cap allows. */
	readonly exposures: readonly Exposure<S>[]
}

interface ExcessInBlock extends Excess<PlacedSession> {
	/** The weeks that have the same exposures. */
	readonly weeks: readonly number[]
}

function excesses<S extends PlacedSession>(week: readonly S[], estimator: Estimator): readonly Excess<S>[] {
	return [...exposuresOf(week).values()].flatMap(exposures => {
		const movement = exposures[0]?.items[0]?.item.movement
		return (movement?.caps ?? []).flatMap((cap): Excess<S>[] => {
			const counted = exposures.filter(({ items }) =>
				countsForCap(
					cap,
					items.map(({ item }) => item),
					estimator,
				),
			)
			return movement && leastDays(counted.map(({ session }) => session.day !== undefined)) > cap.sessions
				? [{ movement, cap, exposures: counted }]
				: []
		})
	})
}

/** Over the cap by the block alone, whoever runs it. */
function inBlock(block: Block, programme: Programme): readonly ExcessInBlock[] {
	return programme.derived(block, workOutInBlock)
}

function workOutInBlock(block: Block, programme: Programme): readonly ExcessInBlock[] {
	const estimator = limitsFor(block, programme).estimator?.value ?? 'epley'
	const weeks = groupedBy(blockSessions(block, programme), session => String(session.blockWeek))
	const found = weeks.flatMap(week => excesses(week, estimator).map(one => ({ ...one, week: week[0].blockWeek })))
	const signature = (one: (typeof found)[number]) =>
		`${one.movement.name.text} ${one.cap.span.start} ${one.exposures.map(exposure => exposure.session.dayText).join(' ')}`
	return groupedBy(found, signature).map(same => ({ ...same[0], weeks: same.map(one => one.week) }))
}

function findingInBlock(one: ExcessInBlock, block: Block, programme: Programme): Finding {
	const { exposures, weeks, movement } = one
	const places = exposures.flatMap(({ items }) => items.map(({ item }) => item.item.movement.span))
	const days = exposures.map(exposure => exposure.session.dayText)
	const others = places
		.filter(span => span !== places[0])
		.map((span): RelatedPlace => ({ definition: block, span, message: 'It is trained here too.' }))
	const excess = exposures.length - one.cap.sessions
	// An item of several days goes from all of them, which is more than is too much.
	const ofOneDay = (item: Item) => exposures.filter(each => each.items.some(one => one.item.item === item)).length === 1
	const alone = excess === 1 ? exposures.filter(({ items }) => items.length === 1 && ofOneDay(items[0]!.item.item)) : []
	return {
		span: places[0] ?? block.header,
		message: messageOf(one, `${weeks.length > 1 ? 'each of ' : ''}${weeksInWords(weeks)}`, days, programme),
		source: originOf(movement, programme),
		related: [...distinctPlaces(others), capPlace(one)],
		corrections: soundOnes('frequency-cap', block, programme, () =>
			alone.flatMap(({ items, session }) =>
				items.flatMap(({ item }) => dropped(item.item, weeks, block, programme, `on ${session.dayText}`)),
			),
		),
	}
}

function messageOf(one: Excess<PlacedSession>, when: string, days: readonly string[], programme: Programme): string {
	const { movement, cap, exposures } = one
	const title = movement.title?.text ?? movement.name.text
	const origin = originOf(movement, programme)
	const from = cap.fromPercent === undefined ? '' : ` at ${decimal(cap.fromPercent)}% or more`
	const over = exposures.length - cap.sessions
	const remedy = over === 1 ? 'Moving one, or dropping it,' : `Moving or dropping ${over} of them`
	return `${title} is in ${counted(exposures.length, 'session')} of ${when}${from} (${days.join(', ')}); its limit is ${cap.sessions} a week${from} (${origin}). ${remedy} brings the week back under the limit.`
}

function capPlace({ movement, cap }: Excess<PlacedSession>): RelatedPlace {
	return { definition: movement, span: cap.span, message: 'The limit stands here.' }
}

/** Over the cap by what a plan changes, by a lifter's loads, or by all plans together: where no block alone is. */
function ofLifter(lifter: Lifter, programme: Programme): readonly PlanFinding[] {
	const estimator = limitsFor(lifter.name.text, programme).estimator?.value ?? 'epley'
	const weeks = groupedBy(lifterSessions(lifter, programme), session => session.monday)
	const found = weeks
		.flatMap(week => excesses(week, estimator))
		.filter(one => !one.exposures.some(exposure => isInBlock(one, exposure.session, programme)))
	const signature = (one: Excess<DatedSession>) =>
		`${one.movement.name.text} ${one.cap.span.start} ${overflow(one).run.run.span.start} ${overflow(one).plan.name.text}`
	return groupedBy(found, signature).map((same): PlanFinding => {
		const [one] = same
		const { plan, run } = overflow(one)
		const mondays = same.map(({ exposures }) => exposures[0]?.session.monday ?? '')
		const days = one.exposures.map(({ session }) => session.dayText)
		const when = `${mondays.length > 1 ? 'each of ' : ''}${calendarWeeksInWords(mondays)}`
		const blocks = new Set(one.exposures.map(({ session }) => session.run.block.name.text))
		const together = blocks.size > 1 ? ` ${inWords([...blocks])} count together.` : ''
		return {
			plan,
			finding: {
				span: run.run.header,
				message: `${messageOf(one, when, days, programme)}${together}`,
				source: originOf(one.movement, programme),
				related: [...distinctPlaces(one.exposures.flatMap(exposurePlaces)), capPlace(one)],
				corrections: soundOnes('frequency-cap', plan, programme, () => [
					...movesInPlan(overflow(one), plan, programme),
					droppedInPlan(one.movement, run.run, plan),
				]),
			},
		}
	})
}

function droppedInPlan({ name, title }: Movement, run: Run, plan: Plan): Proposal<Plan> {
	const span = run.header
	const change: RunChange = { kind: 'drop', movement: { text: name.text, span }, because: undefined, span }
	return {
		correction: { title: `Drop ${title?.text ?? name.text} in this plan`, edits: [lastRunLines(run, [`drop ${name.text}`])] },
		changed: withRunChanges(plan, run, [change]),
	}
}

/** The session that is one too many: its run is where it shows. */
function overflow({ exposures, cap }: Excess<DatedSession>): DatedSession {
	return (exposures[cap.sessions] ?? exposures.at(-1)!).session
}

/** Does the block of a session break the same cap in that week by itself? Then it is reported there. */
function isInBlock(one: Excess<DatedSession>, session: DatedSession, programme: Programme): boolean {
	return inBlock(session.run.block, programme).some(
		other => other.movement === one.movement && other.cap === one.cap && other.weeks.includes(session.blockWeek),
	)
}

function exposurePlaces({ items }: Exposure<DatedSession>): RelatedPlace[] {
	return items.map(({ session, item }) => placeOfItem(item, session, `On ${session.dayText}.`))
}
