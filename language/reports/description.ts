import { decimal } from '../compute/exact.ts'
import { gateText } from '../compute/gates.ts'
import { massText } from '../compute/mass.ts'
import { dayText } from '../compute/session-days.ts'
import type {
	Block,
	Breakdown,
	Definition,
	Deload,
	FrequencyCap,
	Gym,
	Lifter,
	Limits,
	Log,
	Movement,
	Plan,
	Progression,
	RuleLevels,
	SessionDay,
	Team,
} from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { CalendarDate, CountRange, Exact, ExactRange } from '../model/quantities.ts'
import type { Name } from '../model/text.ts'
import { type DailyAverage, type LoggedWeek, loggedLoad } from './session-load.ts'

/** What is known of a definition, for people to read: one line a fact. The hover and `explain` show the same. */
export interface Description {
	/** "Romanian deadlift (movement)". */
	readonly heading: string
	readonly facts: readonly { readonly label: string; readonly text: string }[]
	readonly notes: readonly string[]
	readonly source: string | undefined
	/** Shown always, and first. */
	readonly caution: string | undefined
	readonly builtIn: boolean
}

type Facts = (readonly [label: string, text: string | undefined])[]

/** Describes a definition in a coach's words. */
export function describe(definition: Definition, programme: Programme): Description {
	const facts = factsOf(definition, programme).flatMap(([label, text]) => (text ? [{ label, text }] : []))
	return {
		heading: `${definition.title?.text ?? definition.name.text} (${definition.kind})`,
		facts,
		notes: definition.notes.map(note => note.text),
		source: definition.source?.text,
		caution: definition.kind === 'breakdown' ? definition.caution?.text : undefined,
		builtIn: programme.isBuiltIn(definition),
	}
}

function factsOf(definition: Definition, programme: Programme): Facts {
	const title = (name: Name, kind: TitledKind = 'movement') => programme.find(kind, name.text)?.title?.text ?? name.text
	switch (definition.kind) {
		case 'movement':
			return movementFacts(definition, programme, title)
		case 'breakdown':
			return breakdownFacts(definition, title)
		case 'progression':
			return progressionFacts(definition, programme, title)
		case 'limits':
			return limitsFacts(definition, programme)
		case 'gym':
			return gymFacts(definition)
		case 'lifter':
			return lifterFacts(definition, programme, title)
		case 'block':
			return blockFacts(definition, programme, title)
		case 'plan':
			return planFacts(definition, programme, title)
		case 'log':
			return logFacts(definition, programme, title)
		case 'team':
			return teamFacts(definition, title)
		case 'rules':
			return rulesFacts(definition)
	}
}

type TitledKind = 'movement' | 'breakdown' | 'lifter' | 'block' | 'gym' | 'team'
type Title = (name: Name, kind?: TitledKind) => string

function movementFacts(movement: Movement, programme: Programme, title: Title): Facts {
	const { trains, percentOf, reps } = movement
	return [
		['Pattern', movement.pattern?.value],
		['Trains', trains?.value.join(', then ')],
		['Muscles', list(movement.muscles.map(({ muscle, share }) => `${muscle} ${decimal(share)}`))],
		['Role', list(movement.roles?.value)],
		['Equipment', list(movement.equipment.map(one => one.value))],
		['Sets', movement.sets && `${countRange(movement.sets.value)} a session`],
		['Reps', reps && `${countRange(reps.value)}${reps.orOneSetOf ? `, or one set of ${countRange(reps.orOneSetOf)}` : ''}`],
		['Hold', movement.holdSeconds && `${exactRange(movement.holdSeconds.value)} s`],
		['Carry', movement.carryMetres && `${exactRange(movement.carryMetres.value)} m`],
		['Intensity', movement.intensity && `${exactRange(movement.intensity.value)}%`],
		['Limit', list(movement.caps.map(capText))],
		['Apart', movement.apartDays && `at least ${counted(movement.apartDays.value, 'day')}`],
		[
			'Percents',
			percentOf &&
				`of ${percentOf.share.equals(100) ? '' : `${decimal(percentOf.share)}% of `}the best ${title(percentOf.movement)}`,
		],
		['First needs', list(movement.gates.map(gate => gateText(gate, movement.name.text, programme)))],
		['Order', list(movement.order.map(({ side, pattern }) => `not ${side} main ${pattern} work`))],
		[
			'Load',
			movement.loadAdded ? 'on top of bodyweight' : movement.hands > 1 ? `for each of ${movement.hands} hands` : undefined,
		],
	]
}

function breakdownFacts(breakdown: Breakdown, title: Title): Facts {
	return [
		['How it fails', breakdown.weakLinks && `the weak link is ${breakdown.weakLinks.value.join(', then ')}`],
		[
			'Needs a week',
			list(breakdown.needs.map(({ what, amount, unit }) => `${what} ${counted(decimal(amount), unit.slice(0, -1))}`)),
		],
		['Answered by', list(breakdown.answeredBy.map(name => title(name)))],
	]
}

function progressionFacts(progression: Progression, programme: Programme, title: Title): Facts {
	return progression.steps.map((step, index) => {
		const after = step.after ? `, after ${gateText(step.after, step.movement.text, programme)}` : ''
		return [`Step ${index + 1}`, `${title(step.movement)}${after}`] as const
	})
}

function limitsFacts(limits: Limits, programme: Programme): Facts {
	const owner = limits.owner?.text
	const named = owner === undefined ? undefined : (programme.find('lifter', owner) ?? programme.find('team', owner))
	const { heavy, heavyHingeAndSquat: together } = limits
	const rise = (percent: Exact | undefined) => percent && `at most ${decimal(percent)}% a week`
	return [
		['For', owner === undefined ? undefined : (named?.title?.text ?? owner)],
		['Load rises', rise(limits.loadRise?.value)],
		['Volume rises', rise(limits.volumeRise?.value)],
		['A lighter week', limits.lighterWeekEvery && `every ${counted(countRange(limits.lighterWeekEvery.value), 'week')}`],
		[
			'Heavy',
			heavy &&
				`from ${decimal(heavy.value.fromPercent)}%, at most ${counted(heavy.value.sessions, 'session')} a week for one lift`,
		],
		['Heavy hinge and squat', together && togetherText(together.value)],
		['A session', limits.sessionSeconds && `at most ${decimal(limits.sessionSeconds.value.div(60))} min`],
		['Bests', limits.bestsWeeks && `no older than ${counted(limits.bestsWeeks.value, 'week')}`],
		['Gates', limits.gatesWeeks && `no older than ${counted(limits.gatesWeeks.value, 'week')}`],
		['No set above', limits.noSetAbove && `${decimal(limits.noSetAbove.value)}%`],
		['Sets a muscle', limits.muscleSets && `${countRange(limits.muscleSets.value)} a week`],
		['A max is estimated with', limits.estimator?.value],
		['Monotony is taken with', limits.deviation && `the ${limits.deviation.value} deviation`],
	]
}

function gymFacts(gym: Gym): Facts {
	const { plates, collars, dumbbells } = gym
	return [
		['Bars', list(gym.bars.map(bar => `${bar.name.text} ${massText(bar.mass)}`))],
		[
			'Discs',
			plates && list(plates.value.map(({ mass, count }) => `${massText(mass)}${count === undefined ? '' : ` x ${count}`}`)),
		],
		['Collars', collars && `${massText(collars.value)} the pair`],
		[
			'Dumbbells',
			dumbbells && `${massText(dumbbells.value.from)} to ${massText(dumbbells.value.to)} by ${massText(dumbbells.value.by)}`,
		],
		[
			'Machines',
			list(gym.stacks.map(({ name, from, to, by }) => `${name.text} ${massText(from)} to ${massText(to)} by ${massText(by)}`)),
		],
		['Fixed', list(gym.fixed.map(({ name, masses }) => `${name.text} ${masses.map(massText).join(', ')}`))],
		['Equipment', list(gym.equipment.map(one => one.value))],
	]
}

function lifterFacts(lifter: Lifter, programme: Programme, title: Title): Facts {
	return [
		['Trains at', list(lifter.trainsAt.map(stay => `${title(stay.gym, 'gym')}${during(stay.from, stay.to, 'to')}`))],
		['Bodyweight', lifter.bodyweight && massText(lifter.bodyweight.value)],
		[
			'Bests',
			list(
				lifter.bests.map(best => {
					const asSet = best.reps === undefined ? '' : ` x ${best.reps}`
					const reserve = best.reserve.equals(0) ? '' : ` with ${decimal(best.reserve)} in reserve`
					return `${title(best.movement)} ${massText(best.mass)}${asSet}${reserve}${best.on ? ` (${best.on})` : ''}`
				}),
			),
		],
		[
			'Bases',
			list(
				lifter.bases.map(({ movement, share, mass }) => {
					const of = share ? `${decimal(share)}% of the best` : mass && massText(mass)
					return `${title(movement)} ${of ?? ''}`.trim()
				}),
			),
		],
		[
			'Fails',
			list(
				lifter.fails.map(({ movement, breakdown, above, from, until }) => {
					const beyond = above ? ` above ${decimal(above)}%` : ''
					return `${title(movement)}: ${title(breakdown, 'breakdown')}${beyond}${during(from, until)}`
				}),
			),
		],
		[
			'Kept',
			list(lifter.keeps.map(({ movement, to, from, until }) => `${title(movement)} to ${decimal(to)}%${during(from, until)}`)),
		],
		['Passed', list(lifter.passed.map(({ gate, on }) => `${gateText(gate, '', programme)}${on ? ` (${on})` : ''}`))],
		['Days', list(lifter.available?.value)],
		['Uses', list(lifter.uses.map(({ implement, insteadOf }) => `${implement.text} as ${insteadOf.text}`))],
		[
			'Avoids',
			list(
				lifter.avoids.map(({ movement, pattern, from, until }) => {
					const what = movement ? title(movement) : `pattern ${pattern ?? ''}`
					return `${what}${during(from, until)}`
				}),
			),
		],
	]
}

function blockFacts(block: Block, programme: Programme, title: Title): Facts {
	const lifters = programme.all('plan').filter(plan => plan.runs.some(run => run.block.text === block.name.text))
	return [
		['Weeks', block.weeks && String(block.weeks.value)],
		['Deload', block.deload && deloadText(block.deload)],
		['Targets', list(block.targets.map(name => title(name)))],
		['Answers', list(block.answers.map(name => title(name, 'breakdown')))],
		['First needs', list(block.requires.map(gate => gateText(gate, '', programme)))],
		[
			'Sessions',
			list(
				block.sessions.map(one => `${one.title?.text ?? one.name.text}${one.days.length > 0 ? ` on ${inWords(one.days)}` : ''}`),
			),
		],
		['Turns', list(block.turns.map(turn => `${turn.sessions.map(name => name.text).join(', ')} over ${inWords(turn.days)}`))],
		['Run by', list([...new Set(lifters.map(plan => title(plan.lifter, 'lifter')))])],
	]
}

function planFacts(plan: Plan, programme: Programme, title: Title): Facts {
	const plans = programme.plansIn(plan)
	const isTeams = plans[0] !== plan
	return [
		['For', isTeams ? title(plan.lifter, 'team') : title(plan.lifter, 'lifter')],
		['Plans', isTeams ? list(plans.map(one => one.name.text)) : undefined],
		['Start', plan.start?.value],
		['Days', list(plan.days?.value)],
		['Blocks', list(plan.runs.map(run => title(run.block, 'block')))],
		['Pause', list(plan.pauses.map(pause => `${pause.from} to ${pause.to}${pause.because ? `: ${pause.because.text}` : ''}`))],
		['Meet', list(plan.meets.map(meet => `${meet.on}${meet.title ? ` ${meet.title.text}` : ''}`))],
	]
}

/** Weeks of a log that are shown: the latest. */
const shownWeeks = 4

function logFacts(log: Log, programme: Programme, title: Title): Facts {
	const dates = log.entries.flatMap(entry => entry.on ?? []).sort()
	const span = dates.length === 0 ? '' : `, ${dates[0]} to ${dates[dates.length - 1]}`
	const { weeks, averages } = loggedLoad(log.name.text, programme)
	return [
		['Of', title(log.name, 'lifter')],
		['Entries', `${log.entries.length}${span}`],
		...weeks.slice(-shownWeeks).map(week => [`Week of ${week.monday}`, weekText(week)] as const),
		['Load a day, weighted', list(averages.map(averageText))],
	]
}

/** "load 1290 in 3 sessions, monotony 0.82 (population deviation), strain 1061". */
function weekText({ load, sessions, unrated, isOver, spread }: LoggedWeek): string {
	const rated = sessions - unrated
	const known = rated === 0 ? 'no load' : `load ${decimal(load, 0)} in ${counted(rated, 'session')}`
	const missing = unrated === 0 ? '' : `, ${unrated} more not rated`
	if (!isOver) return `${known}${missing}, so far`
	if (spread?.monotony === undefined || spread.strain === undefined) return `${known}${missing}`
	return `${known}, monotony ${decimal(spread.monotony, 2)} (${spread.deviation} deviation), strain ${decimal(spread.strain, 0)}`
}

function averageText({ spanDays, average }: DailyAverage): string {
	return `${decimal(average, 0)} over ${spanDays} days`
}

function teamFacts(team: Team, title: Title): Facts {
	return [
		['Members', list(team.members.map(name => title(name, 'lifter')))],
		['Trains at', list(team.trainsAt.map(stay => `${title(stay.gym, 'gym')}${during(stay.from, stay.to, 'to')}`))],
	]
}

function rulesFacts(definition: RuleLevels): Facts {
	return definition.levels.map(({ rule, level }) => [rule.text, level] as const)
}

function capText({ sessions, fromPercent }: FrequencyCap): string {
	const from = fromPercent ? ` from ${decimal(fromPercent)}%` : ''
	return `at most ${counted(sessions, 'session')} a week${from}`
}

/** "at most 3 sessions a week together, 2 days apart". */
function togetherText({ sessions, apartDays }: { readonly sessions: number; readonly apartDays: number | undefined }): string {
	const apart = apartDays === undefined ? '' : `, ${counted(apartDays, 'day')} apart`
	return `at most ${counted(sessions, 'session')} a week together${apart}`
}

/** "week 4, 8 with 60% of sets at 90% of load". */
function deloadText({ weeks, sets, load }: Deload): string {
	const shares = [sets && `${decimal(sets)}% of sets`, load && `${decimal(load)}% of load`].filter(Boolean).join(' at ')
	return `week ${weeks.map(countRange).join(', ')}${shares ? ` with ${shares}` : ''}`
}

/** " from 2026-10-01 until 2026-12-31", either of them or nothing. */
function during(from: CalendarDate | undefined, until: CalendarDate | undefined, word: 'until' | 'to' = 'until'): string {
	return `${from ? ` from ${from}` : ''}${until ? ` ${word} ${until}` : ''}`
}

/** "1 set", "2 sets", "4-6 weeks". */
function counted(count: number | string, noun: string): string {
	return `${count} ${noun}${String(count) === '1' ? '' : 's'}`
}

function countRange({ from, to }: CountRange): string {
	return from === to ? String(from) : `${from}-${to}`
}

function exactRange({ from, to }: ExactRange): string {
	return from.equals(to) ? decimal(from) : `${decimal(from)}-${decimal(to)}`
}

/** "monday and thursday evening" */
function inWords(days: readonly SessionDay[]): string {
	const texts = days.map(dayText)
	return texts.length < 2 ? texts.join('') : `${texts.slice(0, -1).join(', ')} and ${texts.at(-1)}`
}

function list(texts: readonly string[] | undefined): string | undefined {
	return texts && texts.length > 0 ? texts.join(', ') : undefined
}
