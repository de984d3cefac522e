import type { Block, Definition, DefinitionKind, Item } from '../../language/model/definitions.ts'
import { weekdays } from '../../language/model/quantities.ts'
import { deviations, estimators, levels, links, muscles, patterns, roles } from '../../language/model/vocabulary.ts'
import { misfit } from '../../language/reports/movement-fit.ts'
import { ruleOf, rules } from '../../language/rules/registry.ts'
import { problemsOf } from '../../language/workspace/problems.ts'
import { blockAt, type Place, roleBefore, runAt } from './place.ts'

/** A name that may stand at a place, with what people call it. */
export interface Candidate {
	readonly name: string
	readonly detail: string
	readonly definition?: Definition
	/** Fits best, and stands before all others. */
	readonly isNear?: boolean
	/** Why it does not fit: it stands after all that do. */
	readonly misfit?: string | undefined
}

type Source = (place: Place) => readonly Candidate[]

const words =
	(list: readonly string[], detail: string): Source =>
	() =>
		list.map(name => ({ name, detail }))

const named =
	(kind: DefinitionKind): Source =>
	({ folder }) =>
		(folder.all(kind) as readonly Definition[])
			.filter(definition => definition.name.text !== '')
			.map(definition => ({ name: definition.name.text, detail: definition.title?.text ?? kind, definition }))

const lifterOrTeam: Source = place => [...named('lifter')(place), ...named('team')(place)]

/** Codes, those first that are reported in the definition at hand. */
const ruleNames: Source = ({ current, folder }) => {
	const reported = new Set(current ? problemsOf(current, folder).map(problem => problem.code) : [])
	return rules.map(rule => ({ name: rule.code, detail: rule.summary, isNear: reported.has(rule.code) }))
}

/** Codes that an exception can silence. */
const allowedRules: Source = place => ruleNames(place).filter(({ name }) => !ruleOf(name)?.always)

/** Movements, those first that the gym has and the gates allow; the others with the reason. */
const fittingMovements: Source = place => {
	const at = { plan: place.plan, block: blockAt(place)?.name.text, role: roleBefore(place) }
	return named('movement')(place).map(one => ({
		...one,
		misfit: one.definition?.kind === 'movement' ? misfit(one.definition, at, place.folder) : undefined,
	}))
}

/** Movements of the block that the run at hand runs, before all others. */
const movementsOfRun: Source = place => nearest(place, itemsOf(blockAt(place)))

/** Movements that the plans of the log's lifter have, before all others. */
const movementsOfLog: Source = place => {
	const plans = place.current?.kind === 'log' ? place.folder.plansOf(place.current.name.text) : []
	return nearest(
		place,
		plans.flatMap(plan => plan.runs.flatMap(run => itemsOf(place.folder.find('block', run.block.text)))),
	)
}

function nearest(place: Place, items: readonly Item[]): Candidate[] {
	const own = new Set(items.map(item => item.movement.text))
	return named('movement')(place).map(one => ({ ...one, isNear: own.has(one.name) }))
}

function itemsOf(block: Block | undefined): readonly Item[] {
	return block?.sessions.flatMap(session => session.items) ?? []
}

/** Days of the week, those first that nothing else of the block takes and the lifter has. */
const freeDays: Source = place => {
	const { folder, plan, current, offset } = place
	const lifter = plan && folder.find('lifter', plan.lifter.text)
	const others = (blockAt(place)?.sessions ?? []).filter(
		session => current?.kind === 'plan' || !(session.span.start < offset && offset <= session.span.end + 1),
	)
	return weekdays.map(name => {
		const taken = others.find(session => session.days.some(day => day.weekday === name))
		const isOff = lifter?.available !== undefined && !lifter.available.value.includes(name)
		const misfit = taken
			? `${taken.name.text} stands there`
			: isOff
				? `${lifter.title?.text ?? lifter.name.text} is not available`
				: undefined
		return { name, detail: 'day of the week', misfit }
	})
}

/** Sessions of the block that the run at hand runs; above the runs those of all. */
const sessionsOfPlan: Source = place => {
	const { folder, current } = place
	if (current?.kind !== 'plan') return []
	const run = runAt(place)
	return (run ? [run] : current.runs).flatMap(({ block }) => sessionsOf(folder.find('block', block.text)))
}

function sessionsOf(block: Block | undefined): Candidate[] {
	return (block?.sessions ?? []).map(({ name, title }) => ({ name: name.text, detail: title?.text ?? 'session' }))
}

/** Members of the team that the plan at hand is for; where it is for no team, all lifters. */
const membersOfPlan: Source = place => {
	const { folder, current } = place
	const team = current?.kind === 'plan' ? folder.find('team', current.lifter.text) : undefined
	const members = new Set(team?.members.map(member => member.text))
	const lifters = named('lifter')(place)
	return team ? lifters.filter(one => members.has(one.name)) : lifters
}

/** Sessions of the blocks that the lifter of the log at hand runs. */
const sessionsOfLog: Source = ({ folder, current }) => {
	const plans = current?.kind === 'log' ? folder.plansOf(current.name.text) : []
	return plans.flatMap(plan => plan.runs.flatMap(run => sessionsOf(folder.find('block', run.block.text))))
}

/** The sessions of the block at hand that have no day of their own: those are the ones that can take turns. */
const sessionsOfBlock: Source = ({ current }) => {
	if (current?.kind !== 'block') return []
	const open = current.sessions.filter(session => session.days.length === 0)
	return open.map(({ name, title }) => ({ name: name.text, detail: title?.text ?? 'session' }))
}

/** What movements of the library and the workspace need, and what the gyms have. */
const equipment: Source = ({ folder }) => {
	const needed = folder.all('movement').flatMap(movement => movement.equipment.map(one => one.value))
	const there = folder
		.all('gym')
		.flatMap(gym => [
			...[...gym.bars, ...gym.stacks, ...gym.fixed].map(one => one.name.text),
			...gym.equipment.map(one => one.value),
		])
	return [...new Set([...needed, ...there])].sort().map(name => ({ name, detail: 'equipment' }))
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
	'NamedDay.day': freeDays,
	'TurnLine.sessions': sessionsOfBlock,
	'MoveLine.day': freeDays,
	'PercentsOfLine.base': words(['best', 'base'], 'what percents refer to'),
	'OfBase.base': words(['best', 'base', 'bodyweight'], 'what the percent refers to'),
	'AllowLine.rule': allowedRules,
	'LevelLine.rule': ruleNames,
	'LevelLine.level': words(levels, 'level'),
	'MoveLine.session': sessionsOfPlan,
	'AddLine.session': sessionsOfPlan,
	'LogEntry.session': sessionsOfLog,
	'LogEntry.missed': sessionsOfLog,
	'Item.movement': fittingMovements,
	'AddLine.movement': fittingMovements,
	'SwapLine.other': fittingMovements,
	'MilestoneLine.movement': fittingMovements,
	'SwapLine.movement': movementsOfRun,
	'DropLine.movement': movementsOfRun,
	'ScaleLine.movement': movementsOfRun,
	'DidLine.movement': movementsOfLog,
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

/** What may stand where a rule of the grammar has a name; each once. */
export function candidates(rule: string, property: string, place: Place): readonly Candidate[] {
	const found = sourceOf(rule, property)?.(place) ?? []
	return found.filter((one, index) => found.findIndex(other => other.name === one.name) === index)
}

/** Is it known what may stand there? */
export function isKnown(rule: string, property: string): boolean {
	return sourceOf(rule, property) !== undefined
}

function sourceOf(rule: string, property: string): Source | undefined {
	return sources[`${rule}.${property}`] ?? (movementProperties.has(property) ? named('movement') : undefined)
}
