import type { Definition, DefinitionKind } from '../../language/model/definitions.ts'
import { weekdays } from '../../language/model/quantities.ts'
import { deviations, estimators, levels, links, muscles, patterns, roles } from '../../language/model/vocabulary.ts'
import { rules } from '../../language/rules/registry.ts'
import type { Folder } from '../../language/workspace/folder.ts'

/** A name that may stand at a place, with what people call it. */
export interface Candidate {
	readonly name: string
	readonly detail: string
	readonly definition?: Definition
}

type Source = (folder: Folder, current: Definition | undefined) => readonly Candidate[]

const words =
	(list: readonly string[], detail: string): Source =>
	() =>
		list.map(name => ({ name, detail }))

const named =
	(kind: DefinitionKind): Source =>
	folder =>
		(folder.all(kind) as readonly Definition[])
			.filter(definition => definition.name.text !== '')
			.map(definition => ({ name: definition.name.text, detail: definition.title?.text ?? kind, definition }))

const lifterOrTeam: Source = (folder, current) => [...named('lifter')(folder, current), ...named('team')(folder, current)]

const ruleNames: Source = () => rules.map(rule => ({ name: rule.code, detail: rule.summary }))

/** Sessions of the blocks that the plan at hand runs. */
const sessionsOfPlan: Source = (folder, current) => {
	if (current?.kind !== 'plan') return []
	return current.runs.flatMap(run =>
		(folder.find('block', run.block.text)?.sessions ?? []).map(({ name, title }) => ({
			name: name.text,
			detail: title?.text ?? 'session',
		})),
	)
}

/** Members of the team that the plan at hand is for; where it is for no team, all lifters. */
const membersOfPlan: Source = (folder, current) => {
	const team = current?.kind === 'plan' ? folder.find('team', current.lifter.text) : undefined
	const members = new Set(team?.members.map(member => member.text))
	const lifters = named('lifter')(folder, current)
	return team ? lifters.filter(one => members.has(one.name)) : lifters
}

/** Sessions of the blocks that the lifter of the log at hand runs. */
const sessionsOfLog: Source = (folder, current) =>
	current?.kind === 'log' ? folder.plansOf(current.name.text).flatMap(plan => sessionsOfPlan(folder, plan)) : []

/** The sessions of the block at hand that have no day of their own: those are the ones that can take turns. */
const sessionsOfBlock: Source = (_, current) => {
	if (current?.kind !== 'block') return []
	const open = current.sessions.filter(session => session.days.length === 0)
	return open.map(({ name, title }) => ({ name: name.text, detail: title?.text ?? 'session' }))
}

/** What a gym may have: what movements of the library and the workspace need. */
const equipment: Source = folder => {
	const all = folder.all('movement').flatMap(movement => movement.equipment.map(one => one.value))
	return [...new Set(all)].sort().map(name => ({ name, detail: 'equipment' }))
}

/** What may stand in a place of the grammar, by the rule and its property. */
const sources: Readonly<Record<string, Source>> = {
	'PatternLine.pattern': words(patterns, 'pattern'),
	'OrderLine.pattern': words(patterns, 'pattern'),
	'AvoidLine.pattern': words(patterns, 'pattern'),
	'TrainsLine.links': words(links, 'link of the chain'),
	'WeakLinkLine.links': words(links, 'link of the chain'),
	'NeedsLine.what': words([...links, ...muscles], 'link or muscle'),
	'MuscleShare.muscle': words(muscles, 'muscle'),
	'RoleLine.roles': words(roles, 'role'),
	'EquipmentLine.names': equipment,
	'BarLine.bar': equipment,
	'StackLine.machine': equipment,
	'FixedLine.implement': equipment,
	'UsesLine.implement': equipment,
	'UsesLine.insteadOf': equipment,
	'Limits.owner': lifterOrTeam,
	'EstimateLine.formula': words(estimators, 'way to estimate a max'),
	'DeviationLine.deviation': words(deviations, 'deviation'),
	'AvailableLine.days': words(weekdays, 'day of the week'),
	'DaysLine.days': words(weekdays, 'day of the week'),
	'NamedDay.day': words(weekdays, 'day of the week'),
	'TurnLine.sessions': sessionsOfBlock,
	'MoveLine.day': words(weekdays, 'day of the week'),
	'PercentsOfLine.base': words(['best', 'base'], 'what percents refer to'),
	'OfBase.base': words(['best', 'base', 'bodyweight'], 'what the percent refers to'),
	'AllowLine.rule': ruleNames,
	'LevelLine.rule': ruleNames,
	'LevelLine.level': words(levels, 'level'),
	'MoveLine.session': sessionsOfPlan,
	'AddLine.session': sessionsOfPlan,
	'LogEntry.session': sessionsOfLog,
	'LogEntry.missed': sessionsOfLog,
	'Run.block': named('block'),
	'Plan.lifter': lifterOrTeam,
	'ForLine.member': membersOfPlan,
	'Log.lifter': named('lifter'),
	'MembersLine.lifters': named('lifter'),
	'TrainsAtLine.gym': named('gym'),
	'FailsLine.breakdown': named('breakdown'),
	'BrokeClause.breakdown': named('breakdown'),
	'AnswersLine.breakdowns': named('breakdown'),
}

/** Properties that name a movement wherever they stand. */
const movementProperties = new Set(['movement', 'movements', 'other'])

export function candidates(
	rule: string,
	property: string,
	folder: Folder,
	current: Definition | undefined,
): readonly Candidate[] {
	if (movementProperties.has(property)) return named('movement')(folder, current)
	return sources[`${rule}.${property}`]?.(folder, current) ?? []
}
