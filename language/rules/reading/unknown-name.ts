import { isMovable } from '../../compute/outline/placements.ts'
import { dayText } from '../../compute/session-days.ts'
import type { Block, Definition, DefinitionKind, Log, Plan, Run } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Reference } from '../../model/reading.ts'
import type { Name } from '../../model/text.ts'
import { meantBy } from '../../names/meant.ts'
import { nearestNames } from '../../names/nearest.ts'
import { inWords } from '../common/words.ts'
import type { Rule } from '../rule.ts'
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
		plan: checkPlan,
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

function unknown(name: Name, begin: string, candidates: readonly string[], otherwise?: string): Finding {
	const near = nearestNames(name.text, candidates)
	const question = near.length > 0 ? `Did you mean ${inWords(near, 'or')}?` : otherwise
	return {
		span: name.span,
		message: question ? `${begin} ${question}` : begin,
		corrections: near.map(text => ({ title: `Write "${text}"`, edits: [{ span: name.span, text }] })),
	}
}

/** What a run changes must be there to be changed: earlier lines of the run count. */
function checkPlan(plan: Plan, programme: Programme): Finding[] {
	return plan.runs.flatMap(run => {
		const block = programme.find('block', run.block.text)
		return block ? checkChanges(run, block, programme) : []
	})
}

function checkChanges(run: Run, block: Block, programme: Programme): Finding[] {
	const found: Finding[] = []
	const sessions = new Set(block.sessions.map(session => session.name.text))
	const present = new Set(block.sessions.flatMap(session => session.items.map(item => item.movement.text)))
	const ever = new Set(present)
	const needMovement = (name: Name, to: string, among: ReadonlySet<string>) => {
		// A movement that nobody defines is reported as that.
		if (name.text === '' || among.has(name.text) || !programme.find('movement', name.text)) return
		const begin = `${block.name.text} has no ${name.text} to ${to} here.`
		found.push(unknown(name, begin, [...among], `Its movements: ${inWords([...among], 'and')}.`))
	}
	const needSession = (name: Name) => {
		if (name.text === '' || sessions.has(name.text)) return
		const otherwise = sessions.size > 0 ? `Its sessions: ${inWords([...sessions], 'and')}.` : 'It has no sessions.'
		found.push(unknown(name, `${block.name.text} has no session "${name.text}".`, [...sessions], otherwise))
	}
	const needOneDay = (name: Name) => {
		const session = block.sessions.find(one => one.name.text === name.text)
		if (session === undefined || isMovable(session, block)) return
		const turn = block.turns.find(one => one.sessions.some(each => each.text === name.text))
		const days = inWords((session.days.length > 0 ? session.days : (turn?.days ?? [])).map(dayText))
		const why = session.days.length > 0 ? `stands on ${days}` : `takes its turn over ${days}`
		const message = `${name.text} ${why}, and this line does not say which of them it moves. Move one day by its date: move ${name.text} from … to …`
		found.push({ span: name.span, message })
	}
	const bringIn = (name: Name) => {
		present.add(name.text)
		ever.add(name.text)
	}
	for (const change of run.changes) {
		switch (change.kind) {
			case 'swap':
				needMovement(change.from, 'swap', present)
				present.delete(change.from.text)
				bringIn(change.to)
				break
			case 'drop':
				needMovement(change.movement, 'drop', present)
				present.delete(change.movement.text)
				break
			case 'add':
				needSession(change.session)
				bringIn(change.item.movement)
				break
			case 'move':
				needSession(change.session)
				needOneDay(change.session)
		}
	}
	// A scale holds for the whole run, wherever it stands among the other lines.
	for (const change of run.changes) if (change.kind === 'scale') needMovement(change.movement, 'scale', ever)
	return found
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
