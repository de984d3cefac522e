import { addDays, daysBetween } from '../compute/calendar.ts'
import { compare, decimal, zero } from '../compute/exact.ts'
import { isInForce } from '../compute/failing-lifts.ts'
import { declaredBreakdowns, needsOfWeek, sessionsOfWeek } from '../compute/needs.ts'
import { outlineBlock } from '../compute/outline.ts'
import { schedulePlan } from '../compute/schedule.ts'
import type { Block, Breakdown, Definition, Gym, Plan } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { CalendarDate, Exact } from '../model/quantities.ts'
import type { PlannedWeek, Schedule } from '../model/schedule.ts'
import type { Span } from '../model/text.ts'
import { type Link, links } from '../model/vocabulary.ts'
import { blockAsks } from './block-asks.ts'
import { blockSheet, itemsToDo } from './block-sheet.ts'
import { planCalendar } from './calendar.ts'
import { capsOfBlock, capsOfPlan } from './cap-exposures.ts'
import { explainSet } from './explanation.ts'
import { gateTimeline } from './gate-timeline.ts'
import { itemsOnSheet, loadSheet, sessionIds, sessionsOnSheet } from './load-sheet.ts'
import type { NeededWork, Picture, Place, PreviewProblem, Titles, Ways, WeekNeeds, WrittenSets } from './preview.ts'
import { weeklyVolume } from './weekly-volume.ts'

/** What a picture cannot know by itself: where things stand in files, and the problems that are open. */
export interface PictureSurroundings {
	readonly problems: readonly PreviewProblem[]
	/** `undefined` where a page leads to no text. */
	readonly placeOf?: ((definition: Definition, span: Span) => Place | undefined) | undefined
}

/** Everything that a page about one plan shows: the sheet, the volume, what breakdowns need, and what is open. */
export function pictureOfPlan(plan: Plan, programme: Programme, { problems, placeOf }: PictureSurroundings): Picture {
	const schedule = schedulePlan(plan, programme)
	const volume = weeklyVolume(plan, programme)
	const declared = declaredBreakdowns(plan, programme)
	return {
		kind: 'plan',
		title: plan.title?.text ?? plan.name.text,
		lifterTitle: schedule.lifter?.title?.text ?? plan.lifter.text,
		sheet: loadSheet(schedule, programme),
		blockSheet: null,
		asks: null,
		calendar: planCalendar(plan, programme),
		gates: gateTimeline(plan, programme, placeOf),
		caps: capsOfPlan(plan, programme),
		volume,
		needs: volume.weeks.map(week => (week.from === null || week.deload ? null : needsOf(plan, week.from, schedule, programme))),
		titles: titlesOf(
			schedule.runs.map(run => run.block),
			schedule.sessions.flatMap(session => session.gym ?? []),
		),
		meets: plan.meets.map(meet => ({ date: meet.on, title: meet.title?.text ?? '' })),
		problems,
		cautions: [...new Set(declared.flatMap(({ breakdown }) => (breakdown.caution ? [breakdown.caution.text] : [])))],
		ways: waysOf(schedule, programme),
		written: placeOf ? writtenSets(schedule, placeOf) : null,
	}
}

/** The same for a block, in percents, and what it asks of a lifter. */
export function pictureOfBlock(block: Block, programme: Programme, { problems, placeOf }: PictureSurroundings): Picture {
	const volume = weeklyVolume(block, programme)
	return {
		kind: 'block',
		title: block.title?.text ?? block.name.text,
		lifterTitle: null,
		sheet: null,
		blockSheet: blockSheet(block, programme),
		asks: blockAsks(block, programme),
		calendar: null,
		gates: [],
		caps: capsOfBlock(block, programme),
		volume,
		needs: outlineBlock(block, programme).weeks.map(week => (week.deload ? null : needsInBlock(block, week, programme))),
		titles: titlesOf([block], []),
		meets: [],
		problems,
		cautions: [],
		ways: null,
		written: placeOf ? writtenInBlock(block, programme, placeOf) : null,
	}
}

function titlesOf(blocks: readonly Block[], gyms: readonly Gym[]): Titles {
	const byName = (definitions: readonly (Block | Gym)[]) =>
		Object.fromEntries(definitions.flatMap(({ name, title }) => (title ? [[name.text, title.text] as const] : [])))
	return { blocks: byName(blocks), gyms: byName(gyms) }
}

/** Needs are silent on a part week, in a deload and in the two weeks before a meet. */
function needsOf(plan: Plan, monday: CalendarDate, schedule: Schedule, programme: Programme): WeekNeeds | null {
	const startsLater = schedule.runs.some(run => run.firstDay > monday && run.firstDay <= addDays(monday, 6))
	const beforeMeet = plan.meets.some(meet => daysBetween(monday, meet.on) >= 0 && daysBetween(monday, meet.on) < 14)
	if (startsLater || beforeMeet) return null
	const inForce = declaredBreakdowns(plan, programme).filter(({ fails }) => isInForce(fails, monday, addDays(monday, 6)))
	const failing = new Set(inForce.map(one => one.lift))
	return weekNeeds(
		inForce.map(({ breakdown }) => breakdown),
		failing,
		sessionsOfWeek(plan.lifter.text, monday, programme),
	)
}

/** What the breakdowns that a block answers need of a week: without a lifter, its targets are the lifts that fail. */
function needsInBlock(block: Block, week: PlannedWeek, programme: Programme): WeekNeeds {
	const answered = block.answers.flatMap(({ text }) => programme.find('breakdown', text) ?? [])
	return weekNeeds(answered, new Set(block.targets.map(({ text }) => text)), week.sessions)
}

function weekNeeds(
	breakdowns: readonly Breakdown[],
	failing: ReadonlySet<string>,
	sessions: Parameters<typeof needsOfWeek>[2],
): WeekNeeds {
	const needed = new Map<string, NeededSoFar>()
	for (const breakdown of breakdowns) {
		for (const { need, found } of needsOfWeek(breakdown, failing, sessions)) {
			const before = needed.get(need.what) ?? {
				sets: undefined,
				sessions: undefined,
				foundSets: zero,
				foundSessions: zero,
				because: [],
			}
			needed.set(need.what, withNeed(before, need.unit, need.amount, found, breakdown.title?.text ?? breakdown.name.text))
		}
	}
	const isLink = (what: string): what is Link => (links as readonly string[]).includes(what)
	const work = (wanted: (what: string) => boolean) =>
		Object.fromEntries([...needed].filter(([what]) => wanted(what)).map(([what, one]) => [what, neededWork(one)]))
	return { links: work(isLink), muscles: work(what => !isLink(what)) }
}

interface NeededSoFar {
	readonly sets: Exact | undefined
	readonly sessions: Exact | undefined
	readonly foundSets: Exact
	readonly foundSessions: Exact
	readonly because: readonly string[]
}

/** Of two breakdowns that need the same, the greater need counts. */
function withNeed(before: NeededSoFar, unit: 'sets' | 'sessions', amount: Exact, found: Exact, title: string): NeededSoFar {
	const because = before.because.includes(title) ? before.because : [...before.because, title]
	const isMore = before[unit] === undefined || compare(amount, before[unit]) > 0
	if (!isMore) return { ...before, because }
	return unit === 'sets'
		? { ...before, because, sets: amount, foundSets: found }
		: { ...before, because, sessions: amount, foundSessions: found }
}

function neededWork({ sets, sessions, foundSets, foundSessions, because }: NeededSoFar): NeededWork {
	return {
		sets: sets ? decimal(sets) : null,
		sessions: sessions ? sessions.valueOf() : null,
		answeringSets: decimal(foundSets),
		answeringSessions: foundSessions.valueOf(),
		because,
	}
}

function waysOf(schedule: Schedule, programme: Programme): Ways {
	const texts: (readonly string[])[] = []
	const known = new Map<string, number>()
	const indexOf = (lines: readonly string[]): number => {
		const key = lines.join('\n')
		const index = known.get(key) ?? texts.push(lines) - 1
		known.set(key, index)
		return index
	}
	const ids = sessionIds(schedule)
	const ofSessions = sessionsOnSheet(schedule).map(session => ({
		id: ids.get(session)!,
		block: session.run.block.name.text,
		items: itemsOnSheet(session).map(item => item.sets.map(set => indexOf(explainSet(set, item, programme)))),
	}))
	return { texts, ofSessions }
}

type PlaceOf = NonNullable<PictureSurroundings['placeOf']>

/** Each place of the text once, however many sets come of it. */
class Places {
	readonly all: Place[] = []
	private readonly known = new Map<string, number | null>()

	constructor(private readonly placeOf: PlaceOf) {}

	indexOf(definition: Definition, span: Span): number | null {
		const key = `${definition.kind} ${definition.name.text} ${span.start}`
		let index = this.known.get(key)
		if (index === undefined) {
			const place = this.placeOf(definition, span)
			index = place ? this.all.push(place) - 1 : null
			this.known.set(key, index)
		}
		return index
	}
}

function writtenSets(schedule: Schedule, placeOf: PlaceOf): WrittenSets {
	const places = new Places(placeOf)
	const ofSets = sessionsOnSheet(schedule).map(session =>
		itemsOnSheet(session).map(item => {
			// What a plan prescribes stands in the plan's own text.
			const owner: Definition = item.prescribedIn === 'plan' ? schedule.plan : session.run.block
			return item.sets.map(set => (item.from === 'computed-warm-up' ? null : places.indexOf(owner, set.group.span)))
		}),
	)
	return { places: places.all, ofSets }
}

function writtenInBlock(block: Block, programme: Programme, placeOf: PlaceOf): WrittenSets {
	const places = new Places(placeOf)
	const ofSets = outlineBlock(block, programme).weeks.flatMap(({ sessions }) =>
		sessions
			.map(itemsToDo)
			.filter(items => items.length > 0)
			.map(items =>
				items.map(({ sets, from }) =>
					sets.map(set => (from === 'computed-warm-up' ? null : places.indexOf(block, set.group.span))),
				),
			),
	)
	return { places: places.all, ofSets }
}
