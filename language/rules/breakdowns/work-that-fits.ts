import { answers, type SessionWork, shortages } from '../../compute/needs.ts'
import type { Block, Lifter, Plan, RunChange, Session } from '../../model/definitions.ts'
import type { Programme } from '../../model/programme.ts'
import type { Correction } from '../../model/reading.ts'
import type { ScheduledRun } from '../../model/schedule.ts'
import { lastRunLines, sessionLines } from '../common/corrections.ts'
import { titleOf } from '../common/titles.ts'
import { blockTrainingWeeks, trainingWeeks } from '../common/training-weeks.ts'
import { isNoWorse, withRunChanges } from '../common/trial-plans.ts'
import { type UsualDose, usualDose, usualItem } from '../common/usual-dose.ts'
import { inWords } from '../common/words.ts'
import type { MissingWork } from './missing-work.ts'

/**
 * Work that meets the needs that weeks fall short of: accessories at the end of sessions, few of them, chosen so that no rule has more to
 * say than before. The planner takes over where this finds nothing.
 */

/** More than this is no correction but a new block. */
const mostAdditions = 4
/** Trials of one search: each judges the lifter's plans anew. */
const mostTrials = 24
interface Addition {
	readonly dose: UsualDose
	/** Name of the session. */
	readonly session: string
}

/** A week that falls short, with the name of each session that can take more. */
type Week = readonly (SessionWork & { readonly name: string | undefined })[]

interface Search {
	readonly missing: MissingWork
	readonly weeks: readonly Week[]
	readonly sessions: readonly string[]
	/** How often each code is reported as it is. */
	readonly before: ReadonlyMap<string, number>
	/** How often each code is reported with such additions. */
	readonly reports: (additions: readonly Addition[]) => ReadonlyMap<string, number>
	readonly programme: Programme
}

/** Lines for a run of a plan. */
export function workForRun(
	missing: MissingWork,
	run: ScheduledRun,
	plan: Plan,
	lifter: Lifter,
	programme: Programme,
): readonly Correction[] {
	const reportsIf = programme.trialsOf(plan)
	if (reportsIf === undefined) return []
	const numbers = missing.weeks.map(({ week }) => week)
	const weeks = trainingWeeks(lifter, programme)
		.filter(week => week.plan === plan && week.run === run && numbers.includes(week.runWeek))
		.map(({ own, sessions }) =>
			sessions.map(session => ({ items: session.items, name: own.includes(session) ? session.session.name.text : undefined })),
		)
	const before = reportsIf(plan)
	const reports = (additions: readonly Addition[]) => reportsIf(withAdditions(plan, run, additions))
	const sessions = run.block.sessions.map(session => session.name.text)
	const found = searchWork({ missing, weeks, sessions, before, reports, programme })
	if (found.length === 0) return []
	const lines = found.map(({ dose, session }) => `add accessory ${dose.movement.name.text} ${dose.text} to ${session}`)
	return [{ title: `Add ${titlesOf(found, programme)} in this plan`, edits: [lastRunLines(run.run, lines)] }]
}

/** Items for a block. */
export function workForBlock(missing: MissingWork, block: Block, programme: Programme): readonly Correction[] {
	const reportsIf = programme.trialsOf(block)
	if (reportsIf === undefined) return []
	const numbers = missing.weeks.map(({ week }) => week)
	const weeks = blockTrainingWeeks(block, programme)
		.filter(({ week }) => numbers.includes(week))
		.map(({ sessions }) => sessions.map(({ items, session }) => ({ items, name: session.name.text })))
	const before = reportsIf(block)
	const reports = (additions: readonly Addition[]) => reportsIf(withItems(block, additions))
	const sessions = block.sessions.map(session => session.name.text)
	const found = searchWork({ missing, weeks, sessions, before, reports, programme })
	const edits = block.sessions.flatMap(session => {
		const here = found.filter(addition => addition.session === session.name.text)
		const lines = here.map(({ dose }) => `accessory ${dose.movement.name.text} ${dose.text}`)
		return lines.length > 0 ? [sessionLines(session, lines)] : []
	})
	return edits.length === 0 ? [] : [{ title: `Add ${titlesOf(found, programme)} to the block`, edits }]
}

/** Takes the addition that brings the weeks nearest to their needs, of those that break nothing, until the needs are met. */
function searchWork({ missing, weeks, sessions, before, reports, programme }: Search): readonly Addition[] {
	const open = candidates(missing, sessions, programme)
	const chosen: Addition[] = []
	let lack = lackOf(missing, weeks, chosen)
	for (let trials = 0; lack > 0 && chosen.length < mostAdditions; ) {
		const ranked = open
			.filter(addition => !chosen.some(one => one.session === addition.session && one.dose === addition.dose))
			.map(addition => ({ addition, lack: lackOf(missing, weeks, [...chosen, addition]) }))
			.filter(one => one.lack < lack)
			.sort((a, b) => a.lack - b.lack)
		const next = ranked.find(({ addition }) => {
			if (trials++ >= mostTrials) return false
			const after = reports([...chosen, addition])
			return isNoWorse(before, after)
		})
		if (next === undefined) return []
		chosen.push(next.addition)
		lack = next.lack
	}
	return lack > 0 ? [] : chosen
}

/** How far the weeks are from their needs: for each need the part of it that is missing. */
function lackOf({ breakdown, failing }: MissingWork, weeks: readonly Week[], additions: readonly Addition[]): number {
	return weeks
		.flatMap(week =>
			shortages(
				breakdown,
				failing,
				week.map(session => withWork(session, additions)),
			),
		)
		.reduce((sum, { needed, found }) => sum + needed.sub(found).div(needed).valueOf(), 0)
}

function withWork(session: Week[number], additions: readonly Addition[]): SessionWork {
	const here = additions.filter(addition => addition.session === session.name)
	const items = here.map(({ dose: { movement, sets } }) => ({
		movement,
		working: true,
		sets: Array.from({ length: sets }, () => ({ optional: false })),
	}))
	return { items: [...session.items, ...items] }
}

/** What answers, in the order in which the breakdown names it; what lacks a load comes last. */
function candidates({ breakdown, failing }: MissingWork, sessions: readonly string[], programme: Programme): readonly Addition[] {
	const named = breakdown.answeredBy.flatMap(answer => programme.find('movement', answer.text) ?? [])
	const movements = breakdown.answeredBy.length > 0 ? named : programme.all('movement')
	const doses = movements
		.filter(movement => answers(movement, breakdown, failing))
		.filter(movement => movement.roles === undefined || movement.roles.value.includes('accessory'))
		.flatMap(movement => usualDose(movement) ?? [])
	const ready = doses.filter(dose => !dose.lacksLoad)
	const later = doses.filter(dose => dose.lacksLoad)
	return [...ready, ...later].flatMap(dose => sessions.map(session => ({ dose, session })))
}

function withAdditions(plan: Plan, { run }: ScheduledRun, additions: readonly Addition[]): Plan {
	const span = run.header
	const changes = additions.map(({ dose, session }): RunChange => {
		return { kind: 'add', item: usualItem(dose, span), session: { text: session, span }, because: undefined, span }
	})
	return withRunChanges(plan, run, changes)
}

function withItems(block: Block, additions: readonly Addition[]): Block {
	const sessions = block.sessions.map((session): Session => {
		const here = additions.filter(addition => addition.session === session.name.text)
		return { ...session, items: [...session.items, ...here.map(addition => usualItem(addition.dose, session.header))] }
	})
	return { ...block, sessions }
}

function titlesOf(additions: readonly Addition[], programme: Programme): string {
	const titles = additions.map(({ dose }) => titleOf('movement', dose.movement.name.text, programme))
	return inWords([...new Set(titles)])
}
