import { compare, decimal, exact, hundred, larger, one, zero } from '../../compute/exact.ts'
import { type Limit, limitsFor } from '../../compute/limits.ts'
import { weeksOfARound } from '../../compute/outline/placements.ts'
import { averagePercent, type LiftTotals } from '../../compute/volume/lift-totals.ts'
import { addRanges, nothing, times } from '../../compute/volume/ranges.ts'
import { noTotals, sumTotals, type Totals } from '../../compute/volume/totals.ts'
import { blockVolume, planVolume } from '../../compute/volume.ts'
import type { Block, Lifter, Plan } from '../../model/definitions.ts'
import type { Finding, RelatedPlace, ShownLevel } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { CalendarDate, Exact, ExactRange } from '../../model/quantities.ts'
import type { ScheduledRun } from '../../model/schedule.ts'
import { groupedBy } from '../common/groups.ts'
import { headOf } from '../common/places.ts'
import { findingsOn, type PlanFinding } from '../common/run-findings.ts'
import { titleOf } from '../common/titles.ts'
import { isBeforeAMeet } from '../common/training-weeks.ts'
import { blockWeeks, calendarWeeks } from '../common/week-rows.ts'
import { inWords } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import page from './volume-jump.md'

export const volumeJump: Rule = {
	code: 'volume-jump',
	area: 'dose',
	level: 'warning',
	summary: 'A week has many more hard sets of a muscle, or much more tonnage of a lift, than the weeks before it.',
	source: 'the `volume rises at most …% a week` of the limits; 4 sets, 30 % of tonnage and 5 points are common practice',
	fix: 'none',
	since: '0.1.0',
	page,
	check: {
		block: checkBlock,
		plan: (plan, programme) => findingsOn(plan, programme, ofLifter),
	},
}

/** So many training weeks are looked back on, and so many weeks at most. */
const trainingWeeksBack = 4
const weeksBack = 8
/** Fewer sets more are no jump, whatever the percent (common practice). */
const fewestSets = exact(4)
/** Percent that the tonnage of a lift may rise by, and points within which its intensity is alike (common practice). */
const tonnageRise = exact(30)
const alikePoints = exact(5)

interface WeekTotals {
	readonly week: number
	/** What it may be compared with: whole, with work, no deload, not the last two weeks before a meet. */
	readonly isBase: boolean
	readonly deload: boolean
	readonly totals: Totals
	/** Sessions take turns in it and have begun to, but have not been round yet: the weeks before it are the other half of it. */
	readonly inFirstRound: boolean
	/** Weeks after which its sessions come round again: more than 1 where they take turns. */
	readonly round: number
}

/** Something that rises. */
interface Rise<W extends WeekTotals> {
	readonly now: W
	readonly base: W
	readonly what: { readonly muscle: string; readonly reps: RepsRise | undefined } | { readonly lift: string }
	readonly from: Exact
	readonly to: Exact
}

/** How the reps of a muscle go with its sets. */
interface RepsRise {
	readonly from: Exact
	readonly to: Exact
}

function baseWeeks<W extends WeekTotals>(weeks: readonly W[], { week, inFirstRound, round }: W): readonly W[] {
	if (inFirstRound) return []
	const bases = weeks.filter(each => each.isBase && each.week < week && each.week >= week - weeksBack)
	return bases.slice(-Math.max(trainingWeeksBack, round))
}

function isInFirstRound(block: Block, week: number): boolean {
	return week > 1 && week <= weeksOfARound(block)
}

/**
 * Hard sets of a muscle against the highest of the training weeks before: by the low end now, by the high end then. Where it was not trained
 * at all there is no percent to go by: then up to the low end of the range for a muscle (`few`) is a beginning. Sets alone are no volume:
 * from 3 x 8 to 5 x 3 the sets rise and the work falls, so where all is done in reps, these must be over the limit too.
 */
function muscleRises<W extends WeekTotals>(
	weeks: readonly W[],
	limit: Exact,
	few: number,
	programme: Programme,
): readonly Rise<W>[] {
	return weeks.flatMap(now => {
		const bases = now.deload ? [] : baseWeeks(weeks, now)
		return [...now.totals.muscles].flatMap(([muscle, { from: to }]): Rise<W>[] => {
			const setsIn = (base: W) => base.totals.muscles.get(muscle)?.to ?? zero
			const base = highestOf(bases, setsIn)
			if (base === undefined) return []
			const from = setsIn(base)
			const begin = from.equals(0) ? exact(few) : from
			if (to.sub(begin).compare(fewestSets) < 0 || !isOver(to, begin, limit)) return []
			const reps = repsRise(muscle, bases, now, programme)
			return reps && !isOver(reps.to, reps.from, limit) ? [] : [{ now, base, what: { muscle, reps }, from, to }]
		})
	})
}

/** The reps of a muscle now, and the most of the weeks before; `undefined` where some of its work is done for time or over a distance. */
function repsRise(muscle: string, bases: readonly WeekTotals[], now: WeekTotals, programme: Programme): RepsRise | undefined {
	const to = repsOf(muscle, now.totals, programme)?.from
	const before = bases.map(base => repsOf(muscle, base.totals, programme)?.to)
	const known = before.filter(reps => reps !== undefined)
	if (to === undefined || known.length < before.length) return undefined
	return { from: known.reduce(larger, zero), to }
}

/** Reps times the share of the movement. */
function repsOf(muscle: string, { lifts }: Totals, programme: Programme): ExactRange | undefined {
	const shares = [...lifts].flatMap(([name, { sets, reps }]) => {
		const share = programme.find('movement', name)?.muscles.find(one => one.muscle === muscle)?.share
		return share ? [{ sets, reps, share }] : []
	})
	if (shares.some(({ sets, reps }) => sets.to > 0 && reps.to === 0)) return undefined
	return shares.map(({ reps, share }) => times({ from: exact(reps.from), to: exact(reps.to) }, share)).reduce(addRanges, nothing)
}

/**
 * Tonnage of main lifts against the highest of the training weeks before, where the intensity is alike. A set more is the least step that
 * there is, and always allowed.
 */
function tonnageRises(weeks: readonly LifterWeek[]): readonly Rise<LifterWeek>[] {
	return weeks.flatMap(now => {
		const bases = now.deload ? [] : baseWeeks(weeks, now)
		return [...now.totals.lifts].flatMap(([lift, totals]): Rise<LifterWeek>[] => {
			if (!now.mainLifts.has(lift) || !isKnown(totals)) return []
			const base = highestOf(bases, each => each.totals.lifts.get(lift)?.tonnage.to ?? zero)
			const before = base?.totals.lifts.get(lift)
			if (base === undefined || before === undefined || !isKnown(before) || !isAlike(totals, before)) return []
			const isJump = isOver(withoutASetMore(totals, before), before.tonnage.to, tonnageRise)
			return isJump ? [{ now, base, what: { lift }, from: before.tonnage.to, to: totals.tonnage.from }] : []
		})
	})
}

/** The tonnage, less one set of it where there are more sets than before. */
function withoutASetMore({ sets, tonnage }: LiftTotals, before: LiftTotals): Exact {
	if (sets.from <= before.sets.to) return tonnage.from
	return tonnage.from.mul(exact(sets.from - 1)).div(exact(sets.from))
}

function highestOf<W>(weeks: readonly W[], amount: (week: W) => Exact): W | undefined {
	return weeks.reduce<W | undefined>(
		(most, each) => (most !== undefined && compare(amount(most), amount(each)) >= 0 ? most : each),
		undefined,
	)
}

function isOver(to: Exact, from: Exact, percent: Exact): boolean {
	return compare(to, from.mul(one.add(percent.div(hundred)))) > 0
}

function isKnown({ unknown, tonnage }: LiftTotals): boolean {
	return unknown.load === 0 && unknown.percent === 0 && tonnage.to.compare(zero) > 0
}

function isAlike(now: LiftTotals, before: LiftTotals): boolean {
	const [is, was] = [averagePercent(now), averagePercent(before)]
	if (is === undefined || was === undefined) return false
	return is.from.sub(was.to).compare(alikePoints) <= 0 && was.from.sub(is.to).compare(alikePoints) <= 0
}

// In a block ---------------------------------------------------------------------------------------------------------------------------

function risesInBlock(block: Block, programme: Programme): readonly Rise<WeekTotals>[] {
	return programme.derived(block, workOutInBlock)
}

function workOutInBlock(block: Block, programme: Programme): readonly Rise<WeekTotals>[] {
	const { volumeRise: limit, muscleSets } = limitsFor(block, programme)
	if (limit === undefined) return []
	const volumes = blockVolume(block, programme).weeks
	const round = weeksOfARound(block)
	const weeks = blockWeeks(block, programme).map(({ week, deload, hasWork }, index): WeekTotals => {
		const totals = volumes[index]?.totals ?? noTotals
		return { week, deload, isBase: hasWork && !deload, totals, inFirstRound: isInFirstRound(block, week), round }
	})
	return muscleRises(weeks, limit.value, muscleSets?.value.from ?? 0, programme)
}

function checkBlock(block: Block, programme: Programme): Finding[] {
	const limit = limitsFor(block, programme).volumeRise
	if (limit === undefined) return []
	const rises = risesInBlock(block, programme)
	const [first] = rises
	if (first === undefined) return []
	return [
		{
			span: largestItem(block, first.now.week, first.base.week, programme) ?? block.header,
			message: messageOf(rises, week => `week ${week.week}`, limit, programme),
			source: limit.origin,
			related: [limitPlace(limit)],
		},
	]
}

/** The item that has the most sets more than in the other week: where the volume comes from. */
function largestItem(block: Block, week: number, base: number, programme: Programme) {
	const items = (number: number) =>
		blockWeeks(block, programme)
			.filter(each => each.week === number)
			.flatMap(each => each.sessions.flatMap(session => session.items))
	const before = new Map(items(base).map(planned => [planned.item, planned.sets.length]))
	const rises = items(week)
		.filter(planned => planned.working)
		.map(({ item, sets }) => ({ item, more: sets.length - (before.get(item) ?? 0) }))
	const largest = rises.reduce<(typeof rises)[number] | undefined>(
		(most, one) => (most && most.more >= one.more ? most : one),
		undefined,
	)
	return largest && headOf(largest.item)
}

// In a lifter's calendar ---------------------------------------------------------------------------------------------------------------

interface LifterWeek extends WeekTotals {
	readonly monday: CalendarDate
	readonly parts: readonly {
		readonly plan: Plan
		readonly run: ScheduledRun
		readonly blockWeek: number
		readonly totals: Totals
	}[]
	/** Movements that are main work in it. */
	readonly mainLifts: ReadonlySet<string>
}

function lifterWeeks(lifter: Lifter, programme: Programme): readonly LifterWeek[] {
	const parts = programme.plansOf(lifter.name.text).flatMap(plan =>
		planVolume(plan, programme).weeks.flatMap(({ monday, run, blockWeek, totals }) => {
			return monday !== undefined && run !== undefined ? [{ plan, monday, run, blockWeek, totals }] : []
		}),
	)
	const meets = programme.plansOf(lifter.name.text).flatMap(plan => plan.meets.map(meet => meet.on))
	return calendarWeeks(lifter, programme).map(({ week, monday, deload, hasWork, isWhole, sessions }): LifterWeek => {
		const own = parts.filter(part => part.monday === monday)
		const main = sessions.flatMap(({ items }) => items.filter(item => item.role === 'main').map(item => item.movementName.text))
		return {
			week,
			monday,
			deload,
			isBase: hasWork && !deload && isWhole && !isBeforeAMeet(monday, meets),
			totals: sumTotals(own.map(part => part.totals)),
			inFirstRound: own.some(part => isInFirstRound(part.run.block, part.blockWeek)),
			round: Math.max(1, ...own.map(part => weeksOfARound(part.run.block))),
			parts: own.filter(part => part.totals.lifts.size > 0),
			mainLifts: new Set(main),
		}
	})
}

function ofLifter(lifter: Lifter, programme: Programme): readonly PlanFinding[] {
	const { volumeRise: limit, muscleSets } = limitsFor(lifter.name.text, programme)
	if (limit === undefined) return []
	const weeks = lifterWeeks(lifter, programme)
	const muscles = muscleRises(weeks, limit.value, muscleSets?.value.from ?? 0, programme)
	const rises = [...muscles, ...tonnageRises(weeks)].filter(rise => !isInBlock(rise, programme))
	const placed = rises.flatMap(rise => {
		const part = largestPart(rise)
		return part ? [{ rise, part }] : []
	})
	const cause = ({ rise, part }: (typeof placed)[number]) =>
		`${part.plan.name.text} ${part.run.monday} ${isAcrossBlocks(rise) ? 'across' : 'within'}`
	return groupedBy(placed, cause).map((same): PlanFinding => {
		const [{ rise, part }] = same
		// A new block may begin with more: that is worth a remark, no more.
		const level: ShownLevel | undefined = isAcrossBlocks(rise) ? 'info' : undefined
		const all = same.map(one => one.rise).sort((a, b) => a.now.week - b.now.week)
		return {
			plan: part.plan,
			finding: {
				span: part.run.run.header,
				message: messageOf(all, week => `the week of ${week.monday}`, limit, programme),
				source: limit.origin,
				related: [
					{ definition: part.run.block, span: part.run.block.header, message: 'The block of that week.' },
					limitPlace(limit),
				],
				...(level ? { level } : {}),
			},
		}
	})
}

/** The block says it, whoever runs it. */
function isInBlock({ now, what }: Rise<LifterWeek>, programme: Programme): boolean {
	if (!('muscle' in what)) return false
	return now.parts.some(({ run, blockWeek }) =>
		risesInBlock(run.block, programme).some(
			rise => rise.now.week === blockWeek && 'muscle' in rise.what && rise.what.muscle === what.muscle,
		),
	)
}

function isAcrossBlocks({ now, base }: Rise<LifterWeek>): boolean {
	return now.parts.every(part => base.parts.every(other => other.run !== part.run))
}

/** The run of that week that adds the most of what rises. */
function largestPart({ now, what }: Rise<LifterWeek>) {
	const amount = ({ totals }: LifterWeek['parts'][number]) =>
		('muscle' in what ? totals.muscles.get(what.muscle)?.to : totals.lifts.get(what.lift)?.tonnage.to) ?? zero
	return highestOf(now.parts, amount)
}

// In words -----------------------------------------------------------------------------------------------------------------------------

function messageOf<W extends WeekTotals>(
	rises: readonly Rise<W>[],
	weekText: (week: W) => string,
	limit: Limit<Exact>,
	programme: Programme,
): string {
	const muscles = rises.filter(rise => 'muscle' in rise.what)
	const lifts = rises.filter(rise => 'lift' in rise.what)
	const said: string[] = []
	if (muscles.length > 0) {
		said.push(
			`Hard sets rise at once ${byWeek(muscles, weekText, programme)}; the limit is ${decimal(limit.value)}% over the highest of the last ${trainingWeeksBack} training weeks (${limit.origin}), from ${decimal(fewestSets)} sets more.`,
		)
	}
	if (lifts.length > 0) {
		said.push(
			`Tonnage rises at like intensity ${byWeek(lifts, weekText, programme)}; the limit is ${decimal(tonnageRise)}% over the highest of the last ${trainingWeeksBack} training weeks (common practice).`,
		)
	}
	return `${said.join(' ')} Spread the step over more weeks.`
}

/** "in week 2 (quads from 8 to 14, 75% more than in week 1) and in week 3 (…)" */
function byWeek<W extends WeekTotals>(rises: readonly Rise<W>[], weekText: (week: W) => string, programme: Programme): string {
	const weeks = groupedBy(rises, rise => String(rise.now.week)).map(same => {
		const parts = same.map(rise => {
			const { from, to, what, base } = rise
			const name = 'muscle' in what ? what.muscle.replaceAll('-', ' ') : titleOf('movement', what.lift, programme)
			const than = from.equals(0) ? ', none' : `, ${decimal(to.div(from).sub(one).mul(hundred), 0)}% more than`
			const places = 'muscle' in what ? 1 : 0
			const reps = 'muscle' in what && !from.equals(0) ? what.reps : undefined
			const withReps = reps ? `, reps from ${decimal(reps.from, 1)} to ${decimal(reps.to, 1)}` : ''
			return `${name} from ${decimal(from, places)} to ${decimal(to, places)}${than} in ${weekText(base)}${withReps}`
		})
		return `in ${weekText(same[0].now)} (${parts.join('; ')})`
	})
	return inWords(weeks)
}

function limitPlace(limit: Limit<Exact>): RelatedPlace {
	return { definition: limit.definition, span: limit.span, message: 'The limit stands here.' }
}
