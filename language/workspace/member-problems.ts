import type { Plan } from '../model/definitions.ts'
import type { Problem } from '../model/problem.ts'
import type { Programme } from '../model/programme.ts'
import type { Correction } from '../model/reading.ts'
import { inWords } from '../rules/common/words.ts'

/** What is reported on the plan of one member of a team. */
export interface OfMember {
	readonly plan: Plan
	readonly problems: readonly Problem[]
}

interface Told {
	readonly plan: Plan
	readonly problem: Problem
}

/** More names than this are counted. */
const mostNames = 3

/**
 * The problems of all plans of a team, each once: what is the same for many members is one message that names them, and where their
 * numbers differ it has those of the first.
 */
export function foldedProblems(members: readonly OfMember[], programme: Programme): readonly Problem[] {
	const byKey = new Map<string, Told[]>()
	for (const { plan, problems } of members) {
		const title = programme.find('lifter', plan.lifter.text)?.title?.text
		const mine = new Map<string, number>()
		for (const problem of problems) {
			const same = `${problem.code} ${problem.level} ${problem.span.start} ${problem.span.end} ${wordsOf(problem.message, plan, title)}`
			// What is said twice of one lifter has two causes.
			const times = (mine.get(same) ?? 0) + 1
			mine.set(same, times)
			const key = `${same} ${times}`
			byKey.set(key, [...(byKey.get(key) ?? []), { plan, problem }])
		}
	}
	return [...byKey.values()].map(told => folded(told, members.length))
}

/** A message without what differs from lifter to lifter: names, numbers, dates, days. */
function wordsOf(message: string, plan: Plan, title: string | undefined): string {
	const names = [plan.name.text, plan.lifter.text, ...(title ? [title] : [])]
	const anonymous = names.reduce((text, name) => text.replaceAll(name, '@'), message)
	const part = String.raw`(?:\d[\d.,:-]*|(?:mon|tues|wednes|thurs|fri|satur|sun)day)`
	const listed = new RegExp(`${part}(?:(?:, | and | or | \\+ | to |-| )${part})*`, 'g')
	return anonymous.replace(listed, '#').replace(/# (\w+?)s?\b/g, '# $1')
}

function folded(told: readonly Told[], members: number): Problem {
	const { plan, problem } = told[0]!
	const isSame = told.every(one => one.problem.message === problem.message)
	const isAll = told.length === members
	const example = isSame ? '' : `, with the numbers of ${plan.lifter.text}`
	const who = isAll && members > 1 ? (members === 2 ? 'both members' : `all ${members} members`) : namesOf(told)
	const begin = isAll && isSame && members > 1 ? '' : `For ${who}${example}: `
	// Not spread: corrections are looked for when somebody asks.
	const { code, level, span, source, related } = problem
	return {
		code,
		level,
		span,
		source,
		related,
		message: `${begin}${problem.message}`,
		get corrections() {
			if (told.length === 1) return problem.corrections
			return isSame && isAll ? problem.corrections.flatMap(forAll) : []
		},
	}
}

/** "per-holst, mara-lind and 4 others". */
function namesOf(told: readonly Told[]): string {
	const names = told.map(({ plan }) => plan.lifter.text)
	const more = names.length - mostNames + 1
	return inWords(more > 1 ? [...names.slice(0, mostNames - 1), `${more} others`] : names)
}

/** The same correction for all members; none where it is one member's own. */
function forAll({ title, edits }: Correction): Correction[] {
	const common = edits.map(edit => edit.forAll ?? edit)
	return [{ title, edits: common.filter((edit, index) => common.findIndex(one => sameEdit(one, edit)) === index) }]
}

function sameEdit(a: Correction['edits'][number], b: Correction['edits'][number]): boolean {
	return a.span.start === b.span.start && a.span.end === b.span.end && a.text === b.text
}
