import type { Plan } from '../model/definitions.ts'
import type { Problem } from '../model/problem.ts'
import type { Programme } from '../model/programme.ts'
import type { Correction, TextEdit } from '../model/reading.ts'
import { groupedBy } from '../rules/common/groups.ts'
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
/** Each member's corrections are tried on all that the member trains. Of more members than this the first speaks, if for all of them. */
const mostAsked = 6

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
			return told.length > mostAsked && !(isSame && isAll) ? [] : sharedCorrections(told, isAll)
		},
	}
}

/** "per-holst, mara-lind and 4 others". */
function namesOf(told: readonly Told[]): string {
	const names = told.map(({ plan }) => plan.lifter.text)
	const more = names.length - mostNames + 1
	return inWords(more > 1 ? [...names.slice(0, mostNames - 1), `${more} others`] : names)
}

/** What all of them would be offered: as a line for all members where all are told, else as lines for each of them. */
function sharedCorrections(told: readonly Told[], isAll: boolean): readonly Correction[] {
	const asked = told.length > mostAsked ? told.slice(0, 1) : told
	const [first, ...others] = asked.map(({ problem }) => problem.corrections)
	return (first ?? []).flatMap((correction): Correction[] => {
		const same = others.flatMap(corrections => corrections.find(one => one.title === correction.title) ?? [])
		if (same.length < others.length) return []
		const all = [correction, ...same]
		const common = all.map(one => one.edits.map(edit => edit.forAll ?? edit))
		const isCommon = isAll && common.every(edits => JSON.stringify(edits) === JSON.stringify(common[0]))
		const title = isCommon ? correction.title : `${correction.title}, for ${namesOf(told)}`
		return [{ title, edits: joined(isCommon ? common.flat() : all.flatMap(one => one.edits)) }]
	})
}

/** Each edit once, and what is put in at one place in one piece. */
function joined(edits: readonly TextEdit[]): readonly TextEdit[] {
	return groupedBy(edits, ({ span }) => `${span.start} ${span.end}`).map(same => ({
		span: same[0].span,
		text: [...new Set(same.map(edit => edit.text))].join(''),
	}))
}
