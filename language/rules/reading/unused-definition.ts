import type { Definition, Progression, Team } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Rule } from '../rule.ts'
import page from './unused-definition.md'

export const unusedDefinition: Rule = {
	code: 'unused-definition',
	area: 'reading',
	level: 'hint',
	summary: 'Nothing refers to a movement, breakdown, progression, gym or team, or a team that is named has no members.',
	source: "the language's own rules",
	fix: 'none',
	since: '0.1.0',
	page,
	check: {
		movement: (movement, programme) => unlessUsed(movement, isNamed(movement, programme)),
		breakdown: (breakdown, programme) => unlessUsed(breakdown, isNamed(breakdown, programme)),
		gym: (gym, programme) => unlessUsed(gym, isNamed(gym, programme)),
		progression: (progression, programme) => unlessUsed(progression, hasStepInUse(progression, programme)),
		team: checkTeam,
	},
}

function* unlessUsed(definition: Definition, used: boolean): Iterable<Finding> {
	const { kind, name, header } = definition
	if (!used) yield { span: header, message: `Nothing refers to the ${kind} "${name.text}".` }
}

function* checkTeam(team: Team, programme: Programme): Iterable<Finding> {
	yield* unlessUsed(team, isNamed(team, programme) || givesItsMembersAGym(team, programme))
	const naming = programme.referrersOf('team', team.name.text)
	if (team.members.length > 0 || naming.length === 0) return
	yield {
		span: team.header,
		message: `The team "${team.name.text}" has no members, so nothing comes of what is for it. Name them in a line of its own, as in members mara-lind, per-holst.`,
		related: naming.map(definition => ({ definition, span: definition.header, message: 'This is for the team.' })),
	}
}

function isNamed(definition: Definition, programme: Programme): boolean {
	return programme.referrersOf(definition.kind, definition.name.text).some(one => one !== definition)
}

/** Nobody names a progression: it is at work where one of its movements is trained. */
function hasStepInUse(progression: Progression, programme: Programme): boolean {
	return progression.steps.some(step =>
		programme.referrersOf('movement', step.movement.text).some(one => one.kind === 'block' || one.kind === 'plan'),
	)
}

/** A team that nobody names is at work where it says where its members train. */
function givesItsMembersAGym(team: Team, programme: Programme): boolean {
	return team.trainsAt.length > 0 && team.members.some(member => programme.find('lifter', member.text))
}
