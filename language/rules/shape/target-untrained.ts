import { weeksOfARound } from '../../compute/outline/placements.ts'
import { schedulePlan } from '../../compute/schedule.ts'
import type { Block, Movement, Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import { groupedBy } from '../common/groups.ts'
import { blockSessions, type PlacedSession, planSessions } from '../common/placed-sessions.ts'
import { titleOf } from '../common/titles.ts'
import { weeksInWords } from '../common/weeks.ts'
import type { Rule } from '../rule.ts'
import page from './target-untrained.md'

export const targetUntrained: Rule = {
	code: 'target-untrained',
	area: 'shape',
	level: 'warning',
	summary: 'A training week holds nothing for a lift that the block targets.',
	source: 'common practice',
	fix: 'none',
	since: '0.1.0',
	page,
	check: { block: checkBlock, plan: checkPlan },
}

/**
 * The training weeks in which nothing is done for a target: not the lift, nothing that is a percent of it, no main work of its pattern. Where
 * sessions take turns, it has its own in another week of the round (`round` weeks).
 */
function weeksWithout(target: Movement, sessions: readonly PlacedSession[], round: number): readonly number[] {
	const items = (week: readonly PlacedSession[]) => week.flatMap(session => session.items).filter(item => item.working)
	const weeks = groupedBy(sessions, session => String(session.runWeek)).map(week => {
		const [{ deload, runWeek }] = week
		const working = items(week)
		const isTrained = working.some(({ movement, movementName, role }) => {
			const isTarget = movementName.text === target.name.text || movement?.percentOf?.movement.text === target.name.text
			const isOfPattern = role === 'main' && movement?.pattern !== undefined && movement.pattern.value === target.pattern?.value
			return isTarget || isOfPattern
		})
		return { runWeek, isTrained, isOpen: !deload && working.length > 0 && !isTrained }
	})
	const trained = weeks.filter(week => week.isTrained).map(week => week.runWeek)
	const isInRound = (week: number) => trained.some(other => Math.abs(other - week) < round)
	return weeks.flatMap(({ runWeek, isOpen }) => (isOpen && !isInRound(runWeek) ? [runWeek] : []))
}

function checkBlock(block: Block, programme: Programme): Finding[] {
	return block.targets.flatMap((name): Finding[] => {
		const target = programme.find('movement', name.text)
		const weeks = target ? weeksWithout(target, blockSessions(block, programme), weeksOfARound(block)) : []
		return weeks.length === 0 ? [] : [{ span: name.span, ...said(name.text, weeks, programme) }]
	})
}

/** What a plan's swaps and drops take away. A part week has its first days behind it. */
function checkPlan(plan: Plan, programme: Programme): Finding[] {
	const { leftOut } = schedulePlan(plan, programme)
	return groupedBy(planSessions(plan, programme), session => session.run.monday).flatMap(sessions => {
		const { run } = sessions[0]
		const round = weeksOfARound(run.block)
		const whole = sessions.filter(({ runWeek }) => !leftOut.some(left => left.run === run && left.runWeek === runWeek))
		return run.block.targets.flatMap((name): Finding[] => {
			const target = programme.find('movement', name.text)
			if (target === undefined) return []
			const known = weeksWithout(target, blockSessions(run.block, programme), round)
			const weeks = weeksWithout(target, whole, round).filter(week => !known.includes(week))
			if (weeks.length === 0) return []
			const related = [{ definition: run.block, span: name.span, message: 'The block targets it here.' }]
			return [{ span: run.run.header, ...said(name.text, weeks, programme), related }]
		})
	})
}

function said(target: string, weeks: readonly number[], programme: Programme): Pick<Finding, 'message' | 'source'> {
	const title = titleOf('movement', target, programme)
	const pattern = programme.find('movement', target)?.pattern?.value
	const main = pattern === undefined ? '' : `, nor main work of its pattern (${pattern})`
	return {
		message: `${title} is a target, but ${weeksInWords(weeks)} ${weeks.length === 1 ? 'has' : 'have'} neither it nor anything that is a percent of it${main} (common practice: what a block is for is trained every week). Add it, or take it out of the targets.`,
		source: 'common practice',
	}
}
