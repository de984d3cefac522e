import { compare, decimal, zero } from '../../compute/exact.ts'
import { type Limit, limitsFor } from '../../compute/limits.ts'
import { sumTotals, type Totals } from '../../compute/volume/totals.ts'
import { blockVolume, planVolume } from '../../compute/volume.ts'
import type { Block, Lifter } from '../../model/definitions.ts'
import type { Finding, RelatedPlace } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { CountRange, Exact } from '../../model/quantities.ts'
import { groupedBy } from '../common/groups.ts'
import { findingsOn, type PlanFinding } from '../common/run-findings.ts'
import { blockWeeks, calendarWeeks } from '../common/week-rows.ts'
import { calendarWeeksInWords, weeksInWords } from '../common/weeks.ts'
import { counted, inWords } from '../common/words.ts'
import type { CheckByKind } from '../rule.ts'

export type VolumeSide = 'low' | 'high'

/** A muscle whose hard sets of a week lie outside the range. */
interface OutsideMuscle {
	readonly muscle: string
	readonly sets: Exact
}

/** Too much by the low end, too little by the high end; a muscle that a week does not train at all is none of it. */
function outsideIn(totals: Totals, { value }: Limit<CountRange>, side: VolumeSide): readonly OutsideMuscle[] {
	return [...totals.muscles].flatMap(([muscle, { from, to }]): OutsideMuscle[] => {
		if (side === 'high') return from.compare(value.to) > 0 ? [{ muscle, sets: from }] : []
		return to.compare(value.from) < 0 && to.compare(0) > 0 ? [{ muscle, sets: to }] : []
	})
}

/** The checks of one end of the range: in blocks, and in plans for what only several plans, or a plan's changes, bring out. */
export function muscleVolumeChecks(side: VolumeSide): CheckByKind {
	const ofBlock = (block: Block, programme: Programme): readonly (OutsideMuscle & { readonly week: number })[] => {
		const limit = limitsFor(block, programme).muscleSets
		const training = new Set(blockWeeks(block, programme).flatMap(week => (week.hasWork && !week.deload ? [week.week] : [])))
		return limit === undefined
			? []
			: blockVolume(block, programme)
					.weeks.filter(week => training.has(week.blockWeek))
					.flatMap(week => outsideIn(week.totals, limit, side).map(one => ({ ...one, week: week.blockWeek })))
	}
	const ofLifter = (lifter: Lifter, programme: Programme): readonly PlanFinding[] => checkLifter(lifter, programme, side, ofBlock)
	return {
		block: (block, programme) => {
			const limit = limitsFor(block, programme).muscleSets
			const found = programme.derived(block, ofBlock)
			if (limit === undefined || found.length === 0) return []
			const parts = groupedBy(found, one => one.muscle).map(same => part(same, weeksInWords(same.map(one => one.week))))
			return [{ span: block.header, ...said(parts, 'This block', limit, side) }]
		},
		plan: (plan, programme) => findingsOn(plan, programme, ofLifter),
	}
}

function checkLifter(
	lifter: Lifter,
	programme: Programme,
	side: VolumeSide,
	ofBlock: (block: Block, programme: Programme) => readonly (OutsideMuscle & { readonly week: number })[],
): readonly PlanFinding[] {
	const limit = limitsFor(lifter.name.text, programme).muscleSets
	if (limit === undefined) return []
	const parts = programme.plansOf(lifter.name.text).flatMap(plan =>
		planVolume(plan, programme).weeks.flatMap(week => {
			return week.run && week.totals.lifts.size > 0 ? [{ plan, ...week, run: week.run }] : []
		}),
	)
	const weeks = calendarWeeks(lifter, programme).filter(week => week.hasWork && !week.deload && week.isWhole)
	const found = weeks.flatMap(({ monday }) => {
		const own = parts.filter(each => each.monday === monday)
		const totals = sumTotals(own.map(each => each.totals))
		const isSaid = (muscle: string) =>
			own.some(each =>
				programme.derived(each.run.block, ofBlock).some(one => one.week === each.blockWeek && one.muscle === muscle),
			)
		return outsideIn(totals, limit, side)
			.filter(one => !isSaid(one.muscle))
			.map(one => {
				// The run that has the most of it is where it shows.
				const setsIn = (each: (typeof own)[number]) => each.totals.muscles.get(one.muscle)?.to ?? zero
				const most = own.reduce((a, b) => (compare(setsIn(b), setsIn(a)) > 0 ? b : a))
				return { ...one, monday, plan: most.plan, run: most.run }
			})
	})
	return groupedBy(found, one => `${one.plan.name.text} ${one.run.monday}`).map((same): PlanFinding => {
		const [{ plan, run }] = same
		const texts = groupedBy(same, one => one.muscle).map(ones => part(ones, calendarWeeksInWords(ones.map(one => one.monday))))
		return {
			plan,
			finding: { span: run.run.header, ...said(texts, 'This run, with all that the lifter does beside it,', limit, side) },
		}
	})
}

/** "quads 27-29 in weeks 2-3" */
function part(same: readonly OutsideMuscle[], when: string): string {
	const sets = same.map(one => one.sets).sort(compare)
	const [low, high] = [decimal(sets[0]!, 1), decimal(sets.at(-1)!, 1)]
	return `${same[0]!.muscle.replaceAll('-', ' ')} ${low === high ? low : `${low}-${high}`} in ${when}`
}

function said(parts: readonly string[], what: string, limit: Limit<CountRange>, side: VolumeSide): Omit<Finding, 'span'> {
	const { from, to } = limit.value
	const related: RelatedPlace[] = [{ definition: limit.definition, span: limit.span, message: 'The limit stands here.' }]
	const much = side === 'high' ? 'many' : 'few'
	return {
		message: `${what} has ${much} hard sets of ${counted(parts.length, 'muscle')} a week: ${inWords(parts)}; the range is ${from}-${to} sets (${limit.origin}).`,
		source: limit.origin,
		related,
	}
}
