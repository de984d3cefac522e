import { limitsFor } from '../compute/limits.ts'
import { referenceFor, referenceSteps, titleOf } from '../compute/loads/reference.ts'
import type { Best, Lifter } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { CalendarDate } from '../model/quantities.ts'
import type { Schedule, ScheduledItem, ScheduledSession, ScheduledSet, Step } from '../model/schedule.ts'
import { changeText, setText } from './set-text.ts'

/** How a load came about, for people to read. Hover, preview and `why` show the same. */
export interface SetExplanation {
	/** Numbers of the sets, from 1, that this holds for: neighbours that ask for the same. */
	readonly from: number
	readonly to: number
	/** "Sets 1-4: 5 reps at 70% rest 3 min". */
	readonly heading: string
	/** What the sets come from, then input, formula with its source, exact load, rounding and discs: one line each. */
	readonly lines: readonly string[]
}

/** One set's way to its load, line by line. */
export function explainSet(set: ScheduledSet, item: ScheduledItem, programme: Programme): readonly string[] {
	return [...originLines(item, programme), ...set.computed.steps().map(stepLine)]
}

/** All sets of an item, those that share their way folded into one. */
export function explainItem(item: ScheduledItem, programme: Programme): readonly SetExplanation[] {
	const explained: SetExplanation[] = []
	for (const [index, set] of item.sets.entries()) {
		const asked = `${setText(set)}${set.optional ? ' (optional)' : ''}`
		const lines = explainSet(set, item, programme)
		const before = explained.at(-1)
		const isSame = before?.heading.endsWith(`: ${asked}`) === true && before.lines.join('\n') === lines.join('\n')
		const from = isSame && before !== undefined ? before.from : index + 1
		if (isSame) explained.pop()
		const numbers = from === index + 1 ? `Set ${from}` : `Sets ${from}-${index + 1}`
		explained.push({ from, to: index + 1, heading: `${numbers}: ${asked}`, lines })
	}
	return explained
}

/** The max that a best written as a set points to, step by step; `undefined` where the best is a max itself. */
export function explainBest(best: Best, lifter: Lifter, programme: Programme): readonly string[] | undefined {
	if ((best.reps ?? 1) === 1 && best.reserve.equals(0)) return undefined
	const estimator = limitsFor(lifter.name.text, programme).estimator?.value ?? 'epley'
	const { text: name } = best.movement
	const alone = { ...lifter, bests: [best] }
	const reference = referenceFor(name, undefined, alone, best.on ?? '', best.mass.unit, estimator, programme)
	if ('missing' in reference) return [reference.reason]
	return referenceSteps(reference, titleOf(name, programme), estimator, programme).map(stepLine)
}

/** A movement on one day of a plan. */
export interface DayExplanation {
	readonly session: ScheduledSession
	readonly item: ScheduledItem
	readonly sets: readonly SetExplanation[]
}

/** How each load of a movement came about on a date, in every session that has it; empty where none does. */
export function explainDay(
	schedule: Schedule,
	date: CalendarDate,
	movement: string,
	programme: Programme,
): readonly DayExplanation[] {
	return schedule.sessions
		.filter(session => session.date === date)
		.flatMap(session =>
			session.items
				.filter(item => item.movementName.text === movement)
				.map(item => ({ session, item, sets: explainItem(item, programme) })),
		)
}

/** Where the sets of an item stand in the text, and what a plan has made of it. */
function originLines(item: ScheduledItem, programme: Programme): readonly string[] {
	const lines: string[] = []
	const instead = item.insteadOf?.text
	if (item.changedBy === 'add') lines.push('The plan adds this to the block.')
	if (instead !== undefined) {
		lines.push(`The plan has this in place of ${programme.find('movement', instead)?.title?.text ?? instead}.`)
	}
	if (item.from === 'deload-fill') {
		lines.push(
			item.filledFrom === undefined
				? 'Deload week, lighter than the prescription for every week.'
				: `Deload week, filled from week ${item.filledFrom}.`,
		)
	}
	if (item.role === 'test' && item.sets.some(set => set.load.kind === 'none')) {
		lines.push('A test: its load is open. Go up from the last set before it; what is lifted is written in the log.')
	} else if (item.role !== item.item.role) lines.push('On the way up to the test (common practice).')
	for (const each of ['week', 'session'] as const) {
		const changes = item.item.changes.filter(change => change.each === each).map(changeText)
		const count = each === 'week' ? item.changeCount : item.sessionChangeCount
		const times = count === 1 ? 'once' : `${count} times`
		if (changes.length > 0 && count > 0) lines.push(`Each ${each} ${changes.join(', ')}: ${times} by this ${each}.`)
	}
	if (item.addedByTimes) {
		const { step, times } = item.addedByTimes
		lines.push(
			`The block is run for time ${times + 1}; each time ${changeText(step)}: ${times === 1 ? 'once' : `${times} times`} by now.`,
		)
	}
	return lines
}

function stepLine({ text, source }: Step): string {
	return source === undefined ? text : `${text} Source: ${source}.`
}
