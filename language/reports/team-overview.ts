import { mondayOf } from '../compute/calendar.ts'
import { planVolume } from '../compute/volume.ts'
import type { Plan, Team } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { CalendarDate } from '../model/quantities.ts'
import { itemsOnSheet } from './load-sheet.ts'
import type { PreviewProblem } from './preview.ts'

/** A team: who is in which week of which block, and whose plan has problems. */
export interface TeamOverview {
	readonly team: string
	/** The team's title, its name where it has none. */
	readonly title: string
	/** Where nobody has said which day it is: `null`. */
	readonly today: CalendarDate | null
	/** The calendar weeks in which any plan has a session or a meet, by their mondays. */
	readonly weeks: readonly CalendarDate[]
	readonly members: readonly TeamMember[]
	/** Each once, however many plans have it. */
	readonly problems: readonly PreviewProblem[]
}

export interface TeamMember {
	readonly lifter: string
	/** The lifter's title, the name where there is none. */
	readonly title: string
	readonly plans: readonly MemberPlan[]
}

export interface MemberPlan {
	readonly plan: string
	readonly title: string
	/** One entry for each of the overview's weeks. */
	readonly weeks: readonly (MemberWeek | null)[]
	/** Indexes into the overview's problems: those of the plan, its lifter and its blocks. */
	readonly problems: readonly number[]
}

export interface MemberWeek {
	readonly block: string
	readonly blockTitle: string
	/** Week of the block, and how many it has; the week is `null` where there is a meet and no block. */
	readonly week: number | null
	readonly of: number
	readonly deload: boolean
	readonly sessions: number
	/** Titles of the week's meets; an empty one where the plan gives none. */
	readonly meets: readonly string[]
}

/** @param problemsOf The open problems of what a plan is made of. */
export function teamOverview(
	team: Team,
	programme: Programme,
	problemsOf: (plan: Plan) => readonly PreviewProblem[],
): TeamOverview {
	const problems = new Map<string, { readonly index: number; readonly problem: PreviewProblem }>()
	const indexOf = (problem: PreviewProblem): number => {
		const key = `${problem.file} ${problem.line} ${problem.column} ${problem.code}`
		const known = problems.get(key) ?? { index: problems.size, problem }
		problems.set(key, known)
		return known.index
	}
	const members = team.members.map(({ text: lifter }) => ({
		lifter,
		title: programme.find('lifter', lifter)?.title?.text ?? lifter,
		plans: programme
			.plansOf(lifter)
			.map(plan => ({ plan, weeks: weeksOf(plan, programme), problems: problemsOf(plan).map(indexOf) })),
	}))
	const weeks = [...new Set(members.flatMap(({ plans }) => plans.flatMap(plan => [...plan.weeks.keys()])))].sort()
	return {
		team: team.name.text,
		title: team.title?.text ?? team.name.text,
		today: programme.today() ?? null,
		weeks,
		members: members.map(member => ({
			...member,
			plans: member.plans.map(({ plan, weeks: own, problems: ofPlan }) => ({
				plan: plan.name.text,
				title: plan.title?.text ?? plan.name.text,
				weeks: weeks.map(monday => own.get(monday) ?? null),
				problems: ofPlan,
			})),
		})),
		problems: [...problems.values()].map(({ problem }) => problem),
	}
}

function weeksOf(plan: Plan, programme: Programme): ReadonlyMap<CalendarDate, MemberWeek> {
	const meets = Map.groupBy(plan.meets, ({ on }) => mondayOf(on))
	const titles = (monday: CalendarDate) => (meets.get(monday) ?? []).map(({ title }) => title?.text ?? '')
	const weeks = new Map<CalendarDate, MemberWeek>()
	for (const { monday, block, blockWeek, run, deload, sessions } of planVolume(plan, programme).weeks) {
		// Where runs overlap, the one that begins later is where the lifter is.
		if (monday === undefined) continue
		weeks.set(monday, {
			block: block.name.text,
			blockTitle: block.title?.text ?? block.name.text,
			week: blockWeek,
			of: run?.weeks ?? blockWeek,
			deload,
			sessions: sessions.filter(({ session }) => itemsOnSheet(session).length > 0).length,
			meets: titles(monday),
		})
	}
	for (const monday of meets.keys()) {
		if (!weeks.has(monday))
			weeks.set(monday, { block: '', blockTitle: '', week: null, of: 0, deload: false, sessions: 0, meets: titles(monday) })
	}
	return weeks
}
