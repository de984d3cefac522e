import type { Limits, RuleLevels } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
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

function* checkLimits(limits: Limits, programme: Programme): Iterable<Finding> {
	const own = programme.limits().filter(one => !programme.isBuiltIn(one))
	const before = own.slice(0, Math.max(own.indexOf(limits), 0))
	for (const [key, words] of Object.entries(limitWords)) {
		const fact = limits[key as keyof typeof limitWords]
		const first = before.find(one => one[key as keyof typeof limitWords])
		const firstFact = first?.[key as keyof typeof limitWords]
		if (!fact || !first || !firstFact) continue
		yield {
			span: fact.span,
			message: `"${words}" is stated in limits ${first.name.text} and here; the first one counts. Keep one of them.`,
			related: [{ definition: first, span: firstFact.span, message: 'Stated here first.' }],
			corrections: [{ title: 'Remove this line', edits: [{ span: fact.span, text: '' }] }],
		}
	}
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
