import type { Allow, Definition } from '../model/definitions.ts'
import type { Finding, Problem, ShownLevel } from '../model/problem.ts'
import type { Programme } from '../model/programme.ts'
import type { Correction, Fault } from '../model/reading.ts'
import type { Span } from '../model/text.ts'
import type { Level } from '../model/vocabulary.ts'
import { ruleOf, rules } from '../rules/registry.ts'
import type { Rule } from '../rules/rule.ts'
import { foldedProblems } from './member-problems.ts'
import { unknownRuleNames } from './rule-names.ts'

/** What the rules say about one definition, and which exceptions silenced something: its own, or its lifter's. */
export interface Verdict {
	readonly problems: readonly Problem[]
	readonly used: ReadonlySet<Allow>
}

/** The problems of one definition, in the order of its text. */
export function problemsOf(definition: Definition, programme: Programme): readonly Problem[] {
	const { problems } = programme.derived(definition, judge)
	const unused = unusedAllows(definition, programme)
	return unused.length === 0 ? problems : [...problems, ...unused].sort(inOrder)
}

/** Problems of a text that no definition could be made of. */
export function problemsOfFaults(faults: readonly Fault[], programme: Programme): readonly Problem[] {
	return faults.flatMap(fault => shown(ruleOf(fault.code), fault, programme))
}

/** What the rules say about a definition: worked out anew only when something that they read has changed. */
export function judge(definition: Definition, programme: Programme): Verdict {
	const plans = definition.kind === 'plan' ? programme.plansIn(definition) : []
	// A team's plan has its own text's problems, and those of its members' plans.
	const isTeams = definition.kind === 'plan' && plans[0] !== definition
	const own = isTeams ? textProblems(definition, programme) : ownProblems(definition, programme)
	const used = new Set<Allow>()
	const problems = own.filter(problem => {
		const allow = ruleOf(problem.code)?.always ? undefined : silencing(problem, definition, programme)
		if (allow) used.add(allow)
		return !allow
	})
	if (!isTeams) return { problems: problems.sort(inOrder), used }
	const members = plans.map(plan => ({ plan, verdict: programme.derived(plan, judge) }))
	for (const { verdict } of members) for (const allow of verdict.used) used.add(allow)
	const folded = foldedProblems(
		members.map(({ plan, verdict }) => ({ plan, problems: verdict.problems })),
		programme,
	)
	return { problems: [...problems, ...folded].sort(inOrder), used }
}

function ownProblems(definition: Definition, programme: Programme): Problem[] {
	const isMembers = definition.kind === 'plan' && definition.teamPlan !== undefined
	const ofText = isMembers ? [] : textProblems(definition, programme)
	const ofKind = rules.flatMap(rule => {
		const check = rule.check?.[definition.kind] as Check | undefined
		return check ? reported(rule, check, definition, programme) : []
	})
	return [...ofText, ...ofKind]
}

/** What is wrong with the text itself, and with the names in it. */
function textProblems(definition: Definition, programme: Programme): Problem[] {
	return [
		...problemsOfFaults([...definition.faults, ...unknownRuleNames(definition)], programme),
		...rules.flatMap(rule => (rule.checkAny ? reported(rule, rule.checkAny, definition, programme) : [])),
	]
}

type Check = (definition: Definition, programme: Programme) => Iterable<Finding>

function reported(rule: Rule, check: Check, definition: Definition, programme: Programme): Problem[] {
	if (levelOf(rule, programme) === 'off') return []
	return [...check(definition, programme)].flatMap(finding => shown(rule, finding, programme))
}

function shown(rule: Rule | undefined, finding: Finding | Fault, programme: Programme): Problem[] {
	if (!rule) return []
	const level = levelOf(rule, programme)
	if (level === 'off') return []
	const own = 'level' in finding ? finding.level : undefined
	// A level that a coach has set holds for every finding of the code.
	const stated = statedLevel(rule, programme) !== undefined
	let corrections: readonly Correction[] | undefined
	return [
		{
			code: rule.code,
			level: stated ? level : (own ?? level),
			span: finding.span,
			message: finding.message,
			source: 'source' in finding ? finding.source : undefined,
			related: ('related' in finding ? finding.related : undefined) ?? [],
			get corrections() {
				corrections ??= typeof finding.corrections === 'function' ? finding.corrections() : (finding.corrections ?? [])
				return corrections
			},
		},
	]
}

/** The level of a rule in this folder: what its `rules` lines say, else the rule's own. */
export function levelOf(rule: Rule, programme: Programme): Level {
	return statedLevel(rule, programme) ?? rule.level
}

function statedLevel(rule: Rule, programme: Programme): ShownLevel | 'off' | undefined {
	if (rule.always) return undefined
	for (const definition of programme.all('rules')) {
		const line = definition.levels.find(one => one.rule.text === rule.code)
		if (line?.level) return line.level
	}
	return undefined
}

/**
 * The exception that silences a problem: one of the definition's own whose place holds the problem's, or, for what is reported on a plan,
 * one of its lifter's.
 */
function silencing(problem: Problem, definition: Definition, programme: Programme): Allow | undefined {
	const holds = (allow: Allow, scope: Span) =>
		allow.rule.text === problem.code && scope.start <= problem.span.start && problem.span.end <= scope.end
	const own = definition.allows.find(allow => holds(allow, allow.scope))
	if (own || definition.kind !== 'plan') return own
	return programme.find('lifter', definition.lifter.text)?.allows.find(allow => allow.rule.text === problem.code)
}

function unusedAllows(definition: Definition, programme: Programme): Problem[] {
	if (definition.allows.length === 0) return []
	const rule = ruleOf('unused-allow')
	if (!rule) return []
	const judged: readonly Definition[] =
		definition.kind === 'lifter' ? [definition, ...programme.plansOf(definition.name.text)] : [definition]
	const used = new Set(judged.flatMap(one => [...programme.derived(one, judge).used]))
	return definition.allows
		.filter(allow => !used.has(allow))
		.flatMap(allow => {
			const named = ruleOf(allow.rule.text)
			// A name that no rule has is reported as that.
			return named ? shown(rule, unusedAllow(allow, named), programme) : []
		})
}

function unusedAllow(allow: Allow, rule: Rule): Finding {
	const message = rule.always
		? `"${rule.code}" cannot be silenced: the caution is always shown.`
		: `This exception silences nothing: "${rule.code}" has nothing to say here.`
	return { span: allow.span, message, corrections: [{ title: 'Remove this exception', edits: [{ span: allow.span, text: '' }] }] }
}

function inOrder(a: Problem, b: Problem): number {
	return a.span.start - b.span.start || (a.code < b.code ? -1 : a.code > b.code ? 1 : 0)
}
