import type { Block, Definition, DefinitionKind, Log, Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Reference } from '../../model/reading.ts'
import { meantBy } from '../../names/meant.ts'
import { inWords } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import { namesInRuns } from './names-in-runs.ts'
import { unknown } from './unknown.ts'
import page from './unknown-name.md'

export const unknownName: Rule = {
	code: 'unknown-name',
	area: 'reading',
	level: 'error',
	summary: 'A name stands for nothing: no file and not the library defines it.',
	source: "the language's own rules",
	fix: 'to confirm',
	since: '0.1.0',
	page,
	checkAny,
	check: {
		plan: namesInRuns,
		log: checkLog,
	},
}

function checkAny(definition: Definition, programme: Programme): Finding[] {
	const unknownOnes = definition.references.flatMap(reference => undefinedName(reference, programme))
	return definition.kind === 'plan' ? [...unknownOnes, ...strangersIn(definition, programme)] : unknownOnes
}

/** Whom a team's plan has lines for must be one of the team. */
function strangersIn(plan: Plan, programme: Programme): Finding[] {
	const whose = plan.lifter.text
	const names = [...plan.members, ...plan.runs.flatMap(run => run.members)].map(lines => lines.member)
	// A member with lines about days in a run is there twice, at one place.
	const places = names.filter((name, index) => names.findIndex(one => one.span.start === name.span.start) === index)
	const known = places.filter(name => name.text !== '' && programme.find('lifter', name.text))
	if (programme.find('lifter', whose)) {
		const begin = `This plan is for ${whose} alone; \`for\` lines stand in the plan of a team.`
		return known.map(({ span }) => ({ span, message: begin }))
	}
	const team = programme.find('team', whose)
	if (team === undefined) return []
	const members = team.members.map(member => member.text)
	const strangers = known.filter(name => !members.includes(name.text))
	return strangers.map(name =>
		unknown(name, `${name.text} is no member of ${whose}.`, members, `Its members: ${inWords(members)}.`),
	)
}

function undefinedName(reference: Reference, programme: Programme): Finding[] {
	if (meantBy(reference, programme)) return []
	const { name, span } = reference
	const kinds = [reference.kind, ...(reference.orKind ? [reference.orKind] : [])]
	const other = otherKindOf(name, programme)
	const begin = other
		? `"${name}" is a ${other}, not a ${inWords(kinds, 'or')}.`
		: `No ${inWords(kinds, 'or')} is called "${name}".`
	const candidates = kinds.flatMap(kind => namesOf(kind, programme))
	return [unknown({ text: name, span }, begin, candidates)]
}

/** A kind of which the name is one, where it is none of the kind that is wanted. */
function otherKindOf(name: string, programme: Programme): DefinitionKind | undefined {
	const kinds = ['movement', 'breakdown', 'progression', 'gym', 'lifter', 'block', 'plan', 'team'] as const
	return kinds.find(kind => programme.find(kind, name))
}

function namesOf(kind: DefinitionKind, programme: Programme): readonly string[] {
	return programme.all(kind).map((one: Definition) => one.name.text)
}

/** A logged session must be one that some block has: first of all those that the lifter's plans run. */
function checkLog(log: Log, programme: Programme): Finding[] {
	const own = () => new Set(programme.plansOf(log.name.text).flatMap(plan => plan.runs.map(run => run.block.text)))
	const blocks = [...own()].map(name => programme.find('block', name)).filter(block => block !== undefined)
	const sessionsOf = (of: readonly Block[]) => of.flatMap(block => block.sessions.map(session => session.name.text))
	const planned = new Set(sessionsOf(blocks))
	const names = log.entries.flatMap(entry => (entry.session && entry.session.text !== '' ? [entry.session] : []))
	const strange = names.filter(name => !planned.has(name.text))
	if (strange.length === 0) return []
	const anywhere = new Set(sessionsOf(programme.all('block')))
	return (
		strange
			// Where there are only logs, nobody can know.
			.filter(name => anywhere.size > 0 && !anywhere.has(name.text))
			.map(name => unknown(name, `No block has a session "${name.text}".`, planned.size > 0 ? [...planned] : [...anywhere]))
	)
}
