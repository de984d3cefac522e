import { decimal, exact, hundred } from '../../compute/exact.ts'
import { lastTrainingWeek } from '../../compute/outline.ts'
import { averagePercent, type LiftTotals } from '../../compute/volume/lift-totals.ts'
import { liftsTogether, type Totals } from '../../compute/volume/totals.ts'
import { blockVolume, planVolume } from '../../compute/volume.ts'
import type { Block, Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Exact } from '../../model/quantities.ts'
import { groupedBy } from '../common/groups.ts'
import { weeksInWords } from '../common/weeks.ts'
import type { Rule } from '../rule.ts'
import page from './deload-not-lighter.md'

export const deloadNotLighter: Rule = {
	code: 'deload-not-lighter',
	area: 'dose',
	level: 'warning',
	summary: 'A deload week is hardly lighter than the training week before it.',
	source: 'common practice',
	fix: 'none',
	since: '0.1.0',
	page,
	check: { block: checkBlock, plan: checkPlan },
}

/** A deload takes the sets below this percent of the last training week, or the average percent this many points down (common practice). */
const mostSets = exact(80)
const fewestPoints = exact(5)

interface WeekTotals {
	readonly week: number
	readonly deload: boolean
	readonly hasWork: boolean
	readonly lifts: LiftTotals
}

interface Compared {
	readonly week: number
	readonly last: number
	/** Percent of the sets of the last training week. */
	readonly sets: Exact
	/** Average percents; `undefined` where nobody can know. */
	readonly percents: { readonly now: Exact; readonly before: Exact } | undefined
}

function compared(weeks: readonly WeekTotals[]): readonly Compared[] {
	return weeks.flatMap((week): Compared[] => {
		const last = week.deload && week.hasWork ? lastTrainingWeek(weeks, week.week) : undefined
		if (last === undefined || last.lifts.sets.to === 0) return []
		const [now, before] = [averagePercent(week.lifts)?.from, averagePercent(last.lifts)?.to]
		return [
			{
				week: week.week,
				last: last.week,
				sets: exact(week.lifts.sets.from).div(exact(last.lifts.sets.to)).mul(hundred),
				percents: now && before && { now, before },
			},
		]
	})
}

function isNotLighter({ sets, percents }: Compared): boolean {
	return sets.compare(mostSets) > 0 && percents !== undefined && percents.before.sub(percents.now).compare(fewestPoints) < 0
}

function totalsOf(week: number, deload: boolean, totals: Totals): WeekTotals {
	const lifts = liftsTogether(totals)
	return { week, deload, hasWork: lifts.sets.to > 0, lifts }
}

function inBlock(block: Block, programme: Programme): readonly Compared[] {
	return programme.derived(block, workOutInBlock)
}

function workOutInBlock(block: Block, programme: Programme): readonly Compared[] {
	return compared(blockVolume(block, programme).weeks.map(({ runWeek, deload, totals }) => totalsOf(runWeek, deload, totals)))
}

function checkBlock(block: Block, programme: Programme): Finding[] {
	const found = inBlock(block, programme).filter(isNotLighter)
	const [first] = found
	return first ? [{ span: block.deload?.span ?? block.header, ...said(first, found) }] : []
}

/** Where the block alone has no percents to compare, the lifter's loads have. */
function checkPlan(plan: Plan, programme: Programme): Finding[] {
	const weeks = planVolume(plan, programme).weeks.flatMap(week => (week.run ? [{ ...week, run: week.run }] : []))
	return groupedBy(weeks, week => week.run.monday).flatMap((ofRun): Finding[] => {
		const [{ run }] = ofRun
		const known = inBlock(run.block, programme)
		const found = compared(ofRun.map(({ runWeek, deload, totals }) => totalsOf(runWeek, deload, totals)))
			.filter(isNotLighter)
			.filter(one => known.find(other => other.week === one.week)?.percents === undefined)
		const [first] = found
		if (first === undefined) return []
		const place = { definition: run.block, span: run.block.deload?.span ?? run.block.header, message: 'The deload stands here.' }
		return [{ span: run.run.header, ...said(first, found), related: [place] }]
	})
}

function said({ last, sets, percents }: Compared, found: readonly Compared[]): Pick<Finding, 'message' | 'source'> {
	const weeks = weeksInWords(found.map(one => one.week))
	const percent = percents ? `${decimal(percents.now, 1)}% on average against ${decimal(percents.before, 1)}%` : ''
	return {
		message: `The deload of ${weeks} is hardly lighter than week ${last}: ${decimal(sets, 0)}% of its sets, at ${percent}; a deload goes to ${decimal(mostSets)}% of the sets or below, or ${decimal(fewestPoints)} points down (common practice). Take sets or load away.`,
		source: 'common practice',
	}
}
