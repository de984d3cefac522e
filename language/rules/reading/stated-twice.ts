import type { Limits, RuleLevels } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import { titleOf } from '../common/titles.ts'
import { inWords } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import page from './stated-twice.md'

/** A second line in the same definition is found where it is read; here are those of two definitions that are one. */
export const statedTwice: Rule = {
	code: 'stated-twice',
	area: 'reading',
	level: 'error',
	summary: 'A fact that may stand once stands twice.',
	source: "the language's own rules",
	fix: 'to confirm',
	since: '0.1.0',
	page,
	check: { limits: checkLimits, rules: checkLevels },
}

/** The words that each fact of `limits` is known by. */
const limitWords = {
	loadRise: 'load rises',
	volumeRise: 'volume rises',
	lighterWeekEvery: 'a lighter week',
	heavy: 'heavy from',
	heavyHingeAndSquat: 'heavy hinge and squat',
	sessionSeconds: 'session at most',
	bestsWeeks: 'bests no older than',
	gatesWeeks: 'gates no older than',
	noSetAbove: 'no set above',
	muscleSets: 'muscle sets',
	estimator: 'estimate with',
	deviation: 'deviation',
} as const satisfies Partial<Record<keyof Limits, string>>

type FactKey = keyof typeof limitWords

function* checkLimits(limits: Limits, programme: Programme): Iterable<Finding> {
	const own = programme.limits().filter(one => !programme.isBuiltIn(one))
	const before = own.slice(0, Math.max(own.indexOf(limits), 0))
	for (const [key, words] of Object.entries(limitWords) as [FactKey, string][]) {
		const fact = limits[key]
		const firsts = before.filter(one => one[key])
		const sameOwner = firsts.find(one => one.owner?.text === limits.owner?.text)
		if (!fact) continue
		if (sameOwner) {
			yield {
				span: fact.span,
				message: `"${words}" is stated in limits ${sameOwner.name.text} and here; the first one counts. Keep one of them.`,
				related: [{ definition: sameOwner, span: sameOwner[key]?.span ?? sameOwner.header, message: 'Stated here first.' }],
				corrections: [{ title: 'Remove this line', edits: [{ span: fact.span, text: '' }] }],
			}
			continue
		}
		for (const first of firsts) yield* betweenTeams(limits, first, key, programme)
	}
}

/** Two teams with a common member, and no word of the member's own: nobody can tell which of two values is meant. */
function* betweenTeams(limits: Limits, first: Limits, key: FactKey, programme: Programme): Iterable<Finding> {
	const [fact, firstFact] = [limits[key], first[key]]
	if (!fact || !firstFact || valueText(fact.value) === valueText(firstFact.value)) return
	const firstMembers = new Set(membersOf(first, programme))
	const common = membersOf(limits, programme).filter(
		name => firstMembers.has(name) && !programme.limits().some(one => one.owner?.text === name && one[key]),
	)
	const [someone] = common
	if (someone === undefined) return
	const [team, firstTeam] = [limits, first].map(one => titleOf('team', one.owner?.text ?? '', programme))
	const who = inWords(common.slice(0, 3).map(name => titleOf('lifter', name, programme)))
	const more = common.length > 3 ? ` and ${common.length - 3} more` : ''
	const counts = key === 'estimator' || key === 'deviation' ? 'the first' : 'the stricter'
	yield {
		span: fact.span,
		message: `"${limitWords[key]}" differs for ${firstTeam} (limits ${first.name.text}) and ${team} (here), and ${who}${more} ${common.length === 1 ? 'is' : 'are'} in both: ${counts} counts. Say the same in both, or write limits for ${someone}.`,
		related: [{ definition: first, span: firstFact.span, message: 'It stands otherwise here.' }],
	}
}

/** Of limits for a team; those for a lifter, whose name wins over a team's, have none. */
function membersOf({ owner }: Limits, programme: Programme): readonly string[] {
	if (owner === undefined || programme.find('lifter', owner.text)) return []
	return programme.find('team', owner.text)?.members.map(member => member.text) ?? []
}

/** Equal for equal values. */
function valueText(value: unknown): string {
	return typeof value === 'object' && value !== null ? Object.values(value).map(valueText).join(' ') : String(value)
}

function* checkLevels(definition: RuleLevels, programme: Programme): Iterable<Finding> {
	const all = programme.all('rules')
	const before = all.slice(0, Math.max(all.indexOf(definition), 0))
	for (const line of definition.levels) {
		const sameRule = (one: RuleLevels) => one.levels.find(other => other.rule.text === line.rule.text)
		const first = before.find(sameRule)
		const firstLine = first && sameRule(first)
		if (!first || !firstLine) continue
		yield {
			span: line.span,
			message: `The level of ${line.rule.text} is stated in rules ${first.name.text} and here; the first one counts. Keep one of them.`,
			related: [{ definition: first, span: firstLine.span, message: 'Stated here first.' }],
			corrections: [{ title: 'Remove this line', edits: [{ span: line.span, text: '' }] }],
		}
	}
}
