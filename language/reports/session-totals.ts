import { decimal, exact } from '../compute/exact.ts'
import { addCounts, addRanges, noCount, nothing } from '../compute/volume/ranges.ts'
import { liftsTogether } from '../compute/volume/totals.ts'
import { blockVolume, planVolume } from '../compute/volume.ts'
import type { Block, Plan } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { CountRange, ExactRange } from '../model/quantities.ts'

/** What a session adds to its week, in a few words: hard sets, and minutes as they are estimated. */
export interface SessionTotal {
	/** "12 of 29 hard sets, 52 of 118 min a week"; ranges where training weeks differ. */
	readonly text: string
	/** "Week 1: 12 of 29 hard sets, 52 of 118 min" for each week, deload weeks too. */
	readonly lines: readonly string[]
}

/** Hard sets and seconds. */
interface Amount {
	readonly sets: CountRange
	readonly seconds: ExactRange
}

interface WeekAmounts {
	readonly week: number
	readonly deload: boolean
	readonly session: Amount
	readonly whole: Amount
	/** Is there another session in the week? */
	readonly hasOthers: boolean
}

/** The totals of each session of a block, by its name, as a plan runs it; without a plan as it is written. */
export function sessionTotals(block: Block, plan: Plan | undefined, programme: Programme): ReadonlyMap<string, SessionTotal> {
	const volume = plan ? planVolume(plan, programme) : blockVolume(block, programme)
	const weeks = volume.weeks.filter(week => week.block.name.text === block.name.text)
	const totals = block.sessions.flatMap(({ name }) => {
		const amounts = weeks.flatMap(({ week, deload, sessions, totals: whole }): WeekAmounts[] => {
			const own = sessions.filter(one => one.session.session.name.text === name.text)
			const session = sum(own.map(one => amountOf(one.totals)))
			return session.sets.to === 0
				? []
				: [{ week, deload, session, whole: amountOf(whole), hasOthers: own.length < sessions.length }]
		})
		return amounts.length === 0 ? [] : [[name.text, totalOf(amounts)] as const]
	})
	return new Map(totals)
}

function amountOf(totals: Parameters<typeof liftsTogether>[0]): Amount {
	return { sets: liftsTogether(totals).sets, seconds: totals.seconds }
}

function sum(amounts: readonly Amount[]): Amount {
	return amounts.reduce<Amount>(
		(all, one) => ({ sets: addCounts(all.sets, one.sets), seconds: addRanges(all.seconds, one.seconds) }),
		{ sets: noCount, seconds: nothing },
	)
}

function totalOf(weeks: readonly WeekAmounts[]): SessionTotal {
	const training = weeks.filter(week => !week.deload)
	const shown = training.length > 0 ? training : weeks
	return {
		text: `${inWords(shown)} a week`,
		lines: weeks.map(week => `Week ${week.week}${week.deload ? ' (deload)' : ''}: ${inWords([week])}`),
	}
}

/** "12 of 29 hard sets, 52 of 118 min", from the least of some weeks to the most. */
function inWords(weeks: readonly WeekAmounts[]): string {
	const sets = (of: (week: WeekAmounts) => Amount) => spread(weeks.flatMap(week => [of(week).sets.from, of(week).sets.to]))
	const minutes = (of: (week: WeekAmounts) => Amount) =>
		spread(weeks.flatMap(week => [of(week).seconds.from, of(week).seconds.to].map(end => Number(decimal(end.div(exact(60)), 0)))))
	const own = (week: WeekAmounts) => week.session
	const whole = (week: WeekAmounts) => week.whole
	const isAlone = weeks.every(week => !week.hasOthers)
	const part = (mine: string, all: string) => (isAlone ? mine : `${mine} of ${all}`)
	return `${part(sets(own), sets(whole))} hard sets, ${part(minutes(own), minutes(whole))} min`
}

function spread(values: readonly number[]): string {
	const [least, most] = [Math.min(...values), Math.max(...values)]
	return least === most ? String(least) : `${least}-${most}`
}
