import { addDays } from '../../compute/calendar.ts'
import { decimal } from '../../compute/exact.ts'
import { type FailingLift, failingLifts, isInForce } from '../../compute/failing-lifts.ts'
import { type NeedOfWeek, shortages } from '../../compute/needs.ts'
import type { Block, Breakdown, Lifter, Plan } from '../../model/definitions.ts'
import type { Finding, RelatedPlace } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Exact } from '../../model/quantities.ts'
import type { PlannedItem, ScheduledRun } from '../../model/schedule.ts'
import type { Name } from '../../model/text.ts'
import type { Link } from '../../model/vocabulary.ts'
import { groupedBy } from '../common/groups.ts'
import { originOf } from '../common/origins.ts'
import { titleOf } from '../common/titles.ts'
import { blockTrainingWeeks, type TrainingWeek, trainingWeeks } from '../common/training-weeks.ts'
import { weeksInWords } from '../common/weeks.ts'
import { counted, inWords } from '../common/words.ts'
import { workForBlock, workForRun } from './work-that-fits.ts'

/** What weeks of a block, or of a run, lack of a breakdown's needs. */
export interface MissingWork {
	readonly breakdown: Breakdown
	/** The lifts that fail, which never count. */
	readonly failing: ReadonlySet<string>
	/** Week of the block, and what it lacks; at least one. */
	readonly weeks: readonly { readonly week: number; readonly short: readonly NeedOfWeek[] }[]
}

interface MissingInBlock extends MissingWork {
	readonly answer: Name
}

interface MissingInRun extends MissingWork {
	readonly plan: Plan
	readonly run: ScheduledRun
	/** The lifter's own lines; empty where only the block says what it answers. */
	readonly declared: readonly FailingLift[]
}

/** The checks of a rule about work that is missing for breakdowns with that weak link. */
export function missingWorkChecks(link: Link) {
	const concerns = ({ breakdown }: MissingWork) => breakdown.weakLinks?.value[0] === link
	return {
		block: (block: Block, programme: Programme): Finding[] =>
			missingInBlock(block, programme)
				.filter(concerns)
				.map(missing => findingInBlock(missing, block, programme)),
		plan: (plan: Plan, programme: Programme): Finding[] => {
			const lifter = programme.find('lifter', plan.lifter.text)
			return lifter === undefined
				? []
				: missingForLifter(lifter, programme)
						.filter(missing => missing.plan === plan && concerns(missing))
						.map(missing => findingInRun(missing, lifter, programme))
		},
	}
}

/** What a block lacks of the needs of the breakdowns that it answers; its targets are the lifts that fail. */
function missingInBlock(block: Block, programme: Programme): readonly MissingInBlock[] {
	return programme.derived(block, workOutBlock)
}

function workOutBlock(block: Block, programme: Programme): readonly MissingInBlock[] {
	const failing = new Set(block.targets.map(target => target.text))
	return block.answers.flatMap((answer): MissingInBlock[] => {
		const breakdown = programme.find('breakdown', answer.text)
		if (breakdown === undefined) return []
		const weeks = blockTrainingWeeks(block, programme)
			.map(({ week, sessions }) => ({ week, short: shortages(breakdown, failing, sessions) }))
			.filter(({ short }) => short.length > 0)
		return weeks.length > 0 ? [{ breakdown, failing, weeks, answer }] : []
	})
}

/**
 * What the weeks of a lifter's runs lack, all plans together. What a block lacks by itself is the block's; a week of two runs is the
 * first one's.
 */
export function missingForLifter(lifter: Lifter, programme: Programme): readonly MissingInRun[] {
	return programme.derived(lifter, workOutLifter)
}

function workOutLifter(lifter: Lifter, programme: Programme): readonly MissingInRun[] {
	const claimed = new Set<string>()
	const found = trainingWeeks(lifter, programme).flatMap(week =>
		breakdownsIn(week, lifter, programme).flatMap(({ breakdown, failing, declared }) => {
			const claim = `${breakdown.name.text} ${week.monday}`
			if (claimed.has(claim)) return []
			claimed.add(claim)
			const short = shortages(breakdown, failing, week.sessions).filter(one => !isBlocksOwn(one, breakdown, week, programme))
			return short.length > 0 ? [{ week, short, breakdown, failing, declared }] : []
		}),
	)
	const place = (one: (typeof found)[number]) =>
		`${one.week.plan.name.text} ${one.week.run.run.span.start} ${one.breakdown.name.text}`
	return groupedBy(found, place).map((same): MissingInRun => {
		const [{ week, breakdown, failing, declared }] = same
		const weeks = same.map(one => ({ week: one.week.runWeek, short: one.short }))
		return { breakdown, failing, declared, weeks, plan: week.plan, run: week.run }
	})
}

/**
 * The breakdowns that a week must answer: those of the lifter's lifts that its block targets or has as main work, be it a percent of the lift;
 * and those that the block says it answers, unless it names several and the lifter has some of them.
 */
function breakdownsIn(week: TrainingWeek, lifter: Lifter, programme: Programme) {
	const { run, own, monday } = week
	const { block } = run
	const main = own.flatMap(session => session.items.filter(item => item.role === 'main' && item.working))
	const lifts = new Set([...block.targets.map(target => target.text), ...main.flatMap(liftsOf)])
	const declared = failingLifts(lifter, programme).filter(
		({ lift, fails }) => lifts.has(lift) && isInForce(fails, monday, addDays(monday, 6)),
	)
	const ofLifter = groupedBy(declared, one => one.breakdown.name.text).map(same => ({
		breakdown: same[0].breakdown,
		failing: new Set(same.map(one => one.lift)),
		declared: same as readonly FailingLift[],
	}))
	const named = block.answers.map(answer => answer.text)
	if (ofLifter.some(one => named.includes(one.breakdown.name.text))) return ofLifter
	const targets = new Set(block.targets.map(target => target.text))
	const answered = named.flatMap(name => programme.find('breakdown', name) ?? [])
	return [...ofLifter, ...answered.map(breakdown => ({ breakdown, failing: targets, declared: [] as readonly FailingLift[] }))]
}

/** The movement itself, and the lift that it is a percent of: a paused deadlift is a deadlift. */
function liftsOf({ movementName, movement }: PlannedItem): readonly string[] {
	return [movementName.text, movement?.percentOf?.movement.text ?? movementName.text]
}

function isBlocksOwn(short: NeedOfWeek, breakdown: Breakdown, { run, blockWeek }: TrainingWeek, programme: Programme): boolean {
	return missingInBlock(run.block, programme).some(
		missing =>
			missing.breakdown === breakdown &&
			missing.weeks.some(({ week, short: lacking }) => week === blockWeek && lacking.some(one => one.need === short.need)),
	)
}

function findingInBlock(missing: MissingInBlock, block: Block, programme: Programme): Finding {
	const { breakdown, answer } = missing
	return {
		span: answer.span,
		message: `${weeksOf(missing)} less than ${breakdown.name.text} needs a week: ${lacking(missing)} (${originOf(breakdown, programme)}). ${whatCounts(missing, programme)}`,
		source: originOf(breakdown, programme),
		related: needPlaces(missing),
		corrections: () => workForBlock(missing, block, programme),
	}
}

function findingInRun(missing: MissingInRun, lifter: Lifter, programme: Programme): Finding {
	const { breakdown, declared, run, plan } = missing
	const lifts = inWords([...missing.failing].map(lift => titleOf('movement', lift, programme)))
	const who =
		declared.length > 0
			? `The ${lifts} of ${titleOf('lifter', lifter.name.text, programme)} ${missing.failing.size > 1 ? 'fail' : 'fails'} with ${breakdown.name.text}`
			: `${run.block.name.text} answers ${breakdown.name.text}`
	const nobody = isUnanswered(missing, programme) ? ` No block of the plan says that it answers ${breakdown.name.text}.` : ''
	const block: RelatedPlace[] = [
		{ definition: run.block, span: answerOf(missing) ?? run.block.header, message: 'The block that is short of it.' },
	]
	const lines = declared.map(({ fails }): RelatedPlace => {
		return { definition: lifter, span: fails.span, message: 'How the lift fails.' }
	})
	return {
		span: run.run.header,
		message: `${who}, and ${weeksOf(missing).toLowerCase()} less than it needs a week: ${lacking(missing)} (${originOf(breakdown, programme)}).${nobody} ${whatCounts(missing, programme)}`,
		source: originOf(breakdown, programme),
		related: [...lines, ...block, ...needPlaces(missing)],
		corrections: () => workForRun(missing, run, plan, lifter, programme),
	}
}

function answerOf({ breakdown, run }: MissingInRun) {
	return run.block.answers.find(answer => answer.text === breakdown.name.text)?.span
}

/** The plan targets the lift, and none of its blocks answers the breakdown. */
function isUnanswered({ breakdown, declared, plan }: MissingInRun, programme: Programme): boolean {
	const blocks = plan.runs.flatMap(run => programme.find('block', run.block.text) ?? [])
	const targeted = declared.some(({ lift }) => blocks.some(block => block.targets.some(target => target.text === lift)))
	return targeted && !blocks.some(block => block.answers.some(answer => answer.text === breakdown.name.text))
}

function weeksOf({ weeks }: MissingWork): string {
	const words = weeksInWords(weeks.map(({ week }) => week))
	return `${words.slice(0, 1).toUpperCase()}${words.slice(1)} ${weeks.length === 1 ? 'holds' : 'hold'}`
}

/** "stability 0 of 2 sessions and 3-4 of 6 sets, upper-back 0 of 4 sets"; by weeks, where not every need is short in all of them. */
function lacking({ weeks }: MissingWork): string {
	const all = weeks.flatMap(({ week, short }) => short.map(one => ({ ...one, week })))
	const perNeed = groupedBy(all, one => `${one.need.span.start}`).map(same => {
		const [{ need, needed }] = same
		const noun = need.unit === 'sets' ? 'set' : 'session'
		const text = `${foundIn(same.map(one => one.found))} of ${counted(decimal(needed), noun)}`
		return { what: need.what, text, weeks: same.map(one => one.week) }
	})
	const perWeeks = groupedBy(perNeed, one => one.weeks.join()).map(same => {
		const when = same[0].weeks.length < weeks.length ? ` in ${weeksInWords(same[0].weeks)}` : ''
		const needs = groupedBy(same, one => one.what).map(ones => `${ones[0].what} ${inWords(ones.map(one => one.text))}`)
		return `${needs.join(', ')}${when}`
	})
	return perWeeks.join('; ')
}

function foundIn(amounts: readonly Exact[]): string {
	const sorted = [...amounts].sort((a, b) => a.compare(b))
	const [least, most] = [sorted[0]!, sorted.at(-1)!]
	return least.equals(most) ? decimal(least) : `${decimal(least)}-${decimal(most)}`
}

function whatCounts({ breakdown }: MissingWork, programme: Programme): string {
	const named = breakdown.answeredBy.map(answer => titleOf('movement', answer.text, programme))
	if (named.length === 0) return `What trains ${breakdown.weakLinks?.value[0] ?? 'it'} first counts.`
	const shown = named.length > mostNamed ? [...named.slice(0, mostNamed - 1), 'others'] : named
	return `What counts: ${inWords(shown)}.`
}

/** A message names no more movements than this; the breakdown lists them all. */
const mostNamed = 5

function needPlaces({ breakdown, weeks }: MissingWork): RelatedPlace[] {
	const needs = new Set(weeks.flatMap(({ short }) => short.map(one => one.need)))
	return [...needs].map(need => ({ definition: breakdown, span: need.span, message: 'The need stands here.' }))
}
