import { decimal } from '../../compute/exact.ts'
import { type LimitsOf, limitsFor } from '../../compute/limits.ts'
import type { Block, Lifter } from '../../model/definitions.ts'
import type { Finding, RelatedPlace } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import { groupedBy } from '../common/groups.ts'
import { isHeavy, liftOf } from '../common/heavy.ts'
import { blockSessions, type DatedSession, lifterSessions, type PlacedSession } from '../common/placed-sessions.ts'
import { distinctPlaces, headOf, placeOfItem } from '../common/places.ts'
import { findingsOn, type PlanFinding } from '../common/run-findings.ts'
import { titleOf } from '../common/titles.ts'
import { calendarWeeksInWords, weeksInWords } from '../common/weeks.ts'
import { counted } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import page from './heavy-exposures.md'

export const heavyExposures: Rule = {
	code: 'heavy-exposures',
	area: 'dose',
	level: 'warning',
	summary: 'A week has more heavy sessions of one lift, or of hinge and squat together, than the limit.',
	source: 'the `heavy from …%` and `heavy hinge and squat` of the limits',
	fix: 'none',
	since: '0.1.0',
	page,
	check: {
		block: checkBlock,
		plan: (plan, programme) => findingsOn(plan, programme, ofLifter),
	},
}

/** Heavy work of a session. */
interface HeavyItem<S extends PlacedSession> {
	readonly session: S
	readonly item: S['items'][number]
}

/** A week with too many heavy days. */
interface HeavyWeek<S extends PlacedSession> {
	/** One lift's name, or hinge and squat together. */
	readonly of: { readonly lift: string } | 'together'
	readonly items: readonly [HeavyItem<S>, ...HeavyItem<S>[]]
	readonly days: readonly string[]
	readonly most: number
}

function heavyWeeks<S extends PlacedSession>(week: readonly S[], whose: LimitsOf, programme: Programme): readonly HeavyWeek<S>[] {
	const { heavy, heavyHingeAndSquat, estimator } = limitsFor(whose, programme)
	if (heavy === undefined) return []
	const mark = heavy.value.fromPercent
	const items = week
		// The day of a test is heavy by its nature, and stands by itself.
		.filter(session => !session.items.some(item => item.role === 'test' && item.working))
		.flatMap(session =>
			(session.items as readonly S['items'][number][])
				.filter(item => isHeavy(item, mark, estimator?.value ?? 'epley'))
				.map((item): HeavyItem<S> => ({ session, item })),
		)
	const byLift = groupedBy(items, one => liftOf(one.item)).flatMap(same =>
		tooMany({ lift: liftOf(same[0].item) }, same, heavy.value.sessions),
	)
	// Where one of the lifts is what makes it too many, that is said.
	if (heavyHingeAndSquat === undefined || byLift.some(one => isHingeOrSquat(one.items[0]))) return byLift
	const [first, ...others] = items.filter(isHingeOrSquat)
	return first ? [...byLift, ...tooMany('together', [first, ...others], heavyHingeAndSquat.value.sessions)] : byLift
}

function isHingeOrSquat({ item }: HeavyItem<PlacedSession>): boolean {
	const pattern = item.movement?.pattern?.value
	return pattern === 'hinge' || pattern === 'squat'
}

function tooMany<S extends PlacedSession>(
	of: HeavyWeek<S>['of'],
	items: readonly [HeavyItem<S>, ...HeavyItem<S>[]],
	most: number,
): HeavyWeek<S>[] {
	const days = groupedBy(items, one => one.session.dayKey).map(([one]) => one.session)
	// `on monday` and `on day 1` may turn out to be one day.
	const placed = days.filter(session => session.day !== undefined).length
	const least = Math.max(placed, days.length - placed)
	return least > most ? [{ of, items, most, days: days.map(session => session.dayText) }] : []
}

interface HeavyWeekOfBlock extends HeavyWeek<PlacedSession> {
	readonly week: number
}

function inBlock(block: Block, programme: Programme): readonly HeavyWeekOfBlock[] {
	return programme.derived(block, workOutInBlock)
}

function workOutInBlock(block: Block, programme: Programme): readonly HeavyWeekOfBlock[] {
	const weeks = groupedBy(blockSessions(block, programme), session => String(session.blockWeek))
	return weeks.flatMap(week => heavyWeeks(week, block, programme).map(one => ({ ...one, week: week[0].blockWeek })))
}

function checkBlock(block: Block, programme: Programme): Finding[] {
	return groupedBy(inBlock(block, programme), one => `${keyOf(one)} ${one.days.join(' ')}`).map(same => {
		const [one] = same
		const weeks = weeksInWords(same.map(each => each.week))
		const others = one.items
			.filter(({ item }) => item.item !== one.items[0].item.item)
			.map(({ item }): RelatedPlace => {
				return { definition: block, span: headOf(item.item), message: 'It is heavy here too.' }
			})
		return {
			span: headOf(one.items[0].item.item),
			...said(one, `${same.length > 1 ? 'each of ' : ''}${weeks}`, block, programme),
			related: [...distinctPlaces(others), ...limitPlace(one, block, programme)],
		}
	})
}

function ofLifter(lifter: Lifter, programme: Programme): readonly PlanFinding[] {
	const name = lifter.name.text
	const meets = new Set(programme.plansOf(name).flatMap(plan => plan.meets.map(meet => meet.on)))
	const sessions = lifterSessions(lifter, programme).filter(session => !meets.has(session.date))
	const found = groupedBy(sessions, session => session.monday)
		.flatMap(week => heavyWeeks(week, name, programme))
		.filter(one => !one.items.some(item => isInBlock(one, item.session, programme)))
	return groupedBy(found, one => `${keyOf(one)} ${overflow(one).plan.name.text} ${overflow(one).run.monday}`).map(same => {
		const [one] = same
		const { plan, run } = overflow(one)
		const mondays = same.map(each => each.items[0].session.monday)
		const when = `${same.length > 1 ? 'each of ' : ''}${calendarWeeksInWords(mondays)}`
		const places = one.items.map(({ item, session }) => placeOfItem(item, session, `On ${session.dayText}.`))
		return {
			plan,
			finding: {
				span: run.run.header,
				...said(one, when, name, programme),
				related: [...distinctPlaces(places), ...limitPlace(one, name, programme)],
			},
		}
	})
}

/** The session that is one too many: its run is where it shows. */
function overflow({ items, most }: HeavyWeek<DatedSession>): DatedSession {
	const days = groupedBy(items, one => one.session.dayKey)
	return (days[most] ?? [items[0]])[0].session
}

function isInBlock(one: HeavyWeek<DatedSession>, session: DatedSession, programme: Programme): boolean {
	return inBlock(session.run.block, programme).some(other => keyOf(other) === keyOf(one) && other.week === session.blockWeek)
}

function keyOf({ of }: HeavyWeek<PlacedSession>): string {
	return of === 'together' ? of : `lift ${of.lift}`
}

function limitOf(one: HeavyWeek<PlacedSession>, whose: LimitsOf, programme: Programme) {
	const { heavy, heavyHingeAndSquat } = limitsFor(whose, programme)
	return one.of === 'together' ? heavyHingeAndSquat : heavy
}

function said(
	one: HeavyWeek<PlacedSession>,
	when: string,
	whose: LimitsOf,
	programme: Programme,
): Pick<Finding, 'message' | 'source'> {
	const { heavy } = limitsFor(whose, programme)
	const origin = limitOf(one, whose, programme)?.origin ?? 'common practice'
	const what = one.of === 'together' ? 'Hinge and squat together have' : `${titleOf('movement', one.of.lift, programme)} has`
	const mark = heavy ? decimal(heavy.value.fromPercent) : ''
	return {
		message: `${what} ${counted(one.days.length, 'heavy session')} (a set at ${mark}% or more) in ${when} (${one.days.join(', ')}); the limit is ${one.most} a week (${origin}). Make one of the days lighter.`,
		source: origin,
	}
}

function limitPlace(one: HeavyWeek<PlacedSession>, whose: LimitsOf, programme: Programme): RelatedPlace[] {
	const limit = limitOf(one, whose, programme)
	return limit ? [{ definition: limit.definition, span: limit.span, message: 'The limit stands here.' }] : []
}
