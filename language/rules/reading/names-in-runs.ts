import { daysBetween, weekdayOf } from '../../compute/calendar.ts'
import { isMovable } from '../../compute/outline/placements.ts'
import { covers, weekCount } from '../../compute/outline/week-choice.ts'
import { outlineBlock } from '../../compute/outline.ts'
import { schedulePlan } from '../../compute/schedule.ts'
import { dayText } from '../../compute/session-days.ts'
import type { Block, DayMove, Plan, Run, RunChange } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Name } from '../../model/text.ts'
import { weeksInWords } from '../common/weeks.ts'
import { inWords } from '../common/words.ts'
import { unknown } from './unknown.ts'

/** What a plan changes must be there to be changed, on the days and in the weeks that it names. */
export function namesInRuns(plan: Plan, programme: Programme): Finding[] {
	const blocks = plan.runs.flatMap(run => programme.find('block', run.block.text) ?? [])
	const sessions = blocks.flatMap(block => block.sessions.map(session => session.name.text))
	return [
		...plan.runs.flatMap(run => {
			const block = programme.find('block', run.block.text)
			return block ? [...new RunNames(run, block, programme).check(), ...strangeDays(plan, run, programme)] : []
		}),
		...plan.moves.flatMap(move => unknownSession(move.session, sessions, 'No block of this plan')),
		...strangeDays(plan, undefined, programme),
	]
}

function unknownSession(name: Name, sessions: readonly string[], where: string): Finding[] {
	if (name.text === '' || sessions.includes(name.text)) return []
	const known = [...new Set(sessions)]
	const otherwise = known.length > 0 ? `The sessions: ${inWords(known)}.` : 'There are no sessions.'
	return [unknown(name, `${where} has a session "${name.text}".`, known, otherwise)]
}

/** The movements of a block as the lines of a run find them, one line after the other, by weeks of the run. */
class RunNames {
	private readonly present = new Map<string, Set<number>>()
	private readonly ever: Set<string>
	private readonly sessions: readonly string[]
	private readonly weeks: readonly number[]
	private readonly found: Finding[] = []

	constructor(
		private readonly run: Run,
		private readonly block: Block,
		private readonly programme: Programme,
	) {
		const blockWeeks = weekCount(block)
		this.weeks = Array.from({ length: blockWeeks * run.times }, (_, index) => index + 1)
		this.sessions = block.sessions.map(session => session.name.text)
		for (const session of block.sessions) for (const item of session.items) this.present.set(item.movement.text, new Set())
		for (const { week, sessions } of outlineBlock(block, programme).weeks) {
			const items = sessions.flatMap(session => session.items)
			const worked = items.filter(item => item.sets.length > 0 || item.from === 'computed-warm-up')
			for (const item of worked)
				for (let time = 0; time < run.times; time++) this.present.get(item.movementName.text)?.add(week + time * blockWeeks)
		}
		this.ever = new Set(this.present.keys())
	}

	check(): Finding[] {
		for (const change of this.run.changes) this.checkChange(change)
		// A scale holds for the whole run, wherever it stands among the other lines.
		for (const change of this.run.changes) if (change.kind === 'scale') this.needMovement(change.movement, 'scale', this.ever)
		return this.found
	}

	private checkChange(change: RunChange): void {
		switch (change.kind) {
			case 'swap':
				this.checkSwap(change)
				break
			case 'drop':
				this.needMovement(change.movement, 'drop', this.present.keys())
				this.present.delete(change.movement.text)
				break
			case 'add':
				this.needSession(change.session)
				this.bringIn(change.item.movement.text, this.weeks)
				break
			case 'move':
				this.needSession(change.session)
				this.needOneDay(change.session)
				break
			case 'move-day':
				this.needSession(change.session)
		}
	}

	private checkSwap({ from, to, weeks }: RunChange & { kind: 'swap' }): void {
		this.needMovement(from, 'swap', this.present.keys())
		const own = this.present.get(from.text)
		if (weeks === undefined) {
			this.present.delete(from.text)
			this.bringIn(to.text, own ?? [])
			return
		}
		const meant = this.weeks.filter(week => covers(weeks, week))
		const without = meant.filter(week => !own?.has(week))
		if (own && without.length > 0) {
			const others = [...this.present].filter(([, there]) => without.every(week => there.has(week))).map(([name]) => name)
			const begin = `${this.block.name.text} has no ${from.text} in ${weeksInWords(without)} to swap here.`
			this.found.push(unknown(from, begin, others, others.length > 0 ? `Its movements then: ${inWords(others)}.` : undefined))
		}
		for (const week of meant) own?.delete(week)
		this.bringIn(to.text, meant)
	}

	private bringIn(name: string, weeks: Iterable<number>): void {
		this.present.set(name, new Set([...(this.present.get(name) ?? []), ...weeks]))
		this.ever.add(name)
	}

	private needMovement(name: Name, to: string, among: Iterable<string>): void {
		const known = [...among]
		// A movement that nobody defines is reported as that.
		if (name.text === '' || known.includes(name.text) || !this.programme.find('movement', name.text)) return
		const begin = `${this.block.name.text} has no ${name.text} to ${to} here.`
		this.found.push(unknown(name, begin, known, `Its movements: ${inWords(known)}.`))
	}

	private needSession(name: Name): void {
		if (name.text === '' || this.sessions.includes(name.text)) return
		const otherwise = this.sessions.length > 0 ? `Its sessions: ${inWords(this.sessions)}.` : 'It has no sessions.'
		const begin = `${this.block.name.text} has no session "${name.text}".`
		this.found.push(unknown(name, begin, this.sessions, otherwise))
	}

	private needOneDay(name: Name): void {
		const session = this.block.sessions.find(one => one.name.text === name.text)
		if (session === undefined || isMovable(session, this.block)) return
		const turn = this.block.turns.find(one => one.sessions.some(each => each.text === name.text))
		const days = inWords((session.days.length > 0 ? session.days : (turn?.days ?? [])).map(dayText))
		const why = session.days.length > 0 ? `stands on ${days}` : `takes its turn over ${days}`
		const message = `${name.text} ${why}, and this line does not say which of them it moves. Move one day by its date: move ${name.text} from … to …`
		this.found.push({ span: name.span, message })
	}
}

/** Days on which the session that a line moves does not stand: of a run's lines, or of those that stand below none. */
function strangeDays(plan: Plan, run: Run | undefined, programme: Programme): Finding[] {
	const moves = run ? run.changes.filter((change): change is DayMove => change.kind === 'move-day') : plan.moves
	if (moves.length === 0) return []
	const sessions = schedulePlan(plan, programme).sessions.filter(session => run === undefined || session.run.run === run)
	return moves.flatMap((move, index): Finding[] => {
		const name = move.session.text
		const own = sessions.filter(session => session.session.name.text === name)
		const isFirst = moves.findIndex(one => one.session.text === name && one.from === move.from) === index
		const span = move.fromSpan
		if (isFirst && own.some(session => session.movedFrom === move.from)) return []
		if (!isFirst) return [{ span, message: `Another line moves ${name} of ${move.from} already.` }]
		const free = own.filter(session => session.movedFrom === undefined).map(session => session.date)
		const nearest = free.toSorted((a, b) => Math.abs(daysBetween(move.from, a)) - Math.abs(daysBetween(move.from, b)))[0]
		if (nearest === undefined) return []
		return [
			{
				span,
				message: `${name} does not stand on ${weekdayOf(move.from)} ${move.from}, so there is nothing to move. The nearest day on which it does is ${weekdayOf(nearest)} ${nearest}.`,
				corrections: [{ title: `Write ${nearest}`, edits: [{ span, text: nearest }] }],
			},
		]
	})
}
