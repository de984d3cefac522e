import type { MemberDays, Plan, Run } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'

/** The plans of a text, by member: a plan and the name of a member say it all, so an edit elsewhere leaves them the objects that they are. */
const kept = new WeakMap<Plan, { plans: Map<string, Plan>; last: readonly Plan[] }>()

/**
 * The plans of single lifters that a plan as it is written makes: itself, or one for each member of its team, named `winter/per-holst`. The
 * same objects, in the same list, as long as the plan's text and the team's members are the same.
 */
export function plansIn(plan: Plan, programme: Programme): readonly Plan[] {
	const known = kept.get(plan) ?? { plans: new Map<string, Plan>(), last: [] }
	kept.set(plan, known)
	const next = membersOf(plan, programme)?.map(member => {
		const own = known.plans.get(member) ?? planOf(member, plan)
		known.plans.set(member, own)
		return own
	}) ?? [plan]
	if (next.length !== known.last.length || next.some((one, index) => one !== known.last[index])) known.last = next
	return known.last
}

/** Each member once; `undefined` where the plan is for a lifter, or nobody knows for whom it is. */
function membersOf(plan: Plan, programme: Programme): readonly string[] | undefined {
	const whose = plan.lifter.text
	if (plan.teamPlan !== undefined || programme.find('lifter', whose)) return undefined
	const names = programme.find('team', whose)?.members.map(member => member.text)
	return names && [...new Set(names)].filter(name => name !== '')
}

/** A team's plan with what it says for one member alone: own days come in place of the common ones, all else beside it. */
function planOf(member: string, plan: Plan): Plan {
	const own = plan.members.filter(lines => lines.member.text === member)
	const all = <K extends 'pauses' | 'meets' | 'moves' | 'notes'>(key: K): MemberDays[K] & Plan[K] =>
		[plan, ...own].flatMap(one => one[key] as never[]) as never
	return {
		...plan,
		name: { ...plan.name, text: `${plan.name.text}/${member}` },
		lifter: { ...plan.lifter, text: member },
		start: own.find(one => one.start)?.start ?? plan.start,
		days: own.find(one => one.days)?.days ?? plan.days,
		pauses: all('pauses'),
		meets: all('meets'),
		moves: all('moves'),
		notes: all('notes'),
		runs: plan.runs.map(run => runOf(member, run)),
		members: [],
		allows: plan.allows.filter(allow => allow.member === undefined || allow.member === member),
		// What is wrong with the text, and whom it names, is the team's plan's to say.
		faults: [],
		references: [],
		teamPlan: plan,
	}
}

function runOf(member: string, run: Run): Run {
	const own = run.members.filter(lines => lines.member.text === member)
	return {
		...run,
		changes: [run, ...own].flatMap(one => one.changes),
		notes: [run, ...own].flatMap(one => one.notes),
		members: [],
		forMember: member,
	}
}
