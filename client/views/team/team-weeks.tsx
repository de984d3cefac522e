import { useContext, useLayoutEffect, useRef } from 'preact/hooks'
import type { MemberWeek, TeamOverview } from '../../../language/reports/team-overview.ts'
import { counted } from '../counted.ts'
import { ReaderContext } from '../reader/context.ts'
import { mondayOf } from '../sheet/weeks.ts'
import { teamWords as words } from './words.ts'

/** Members who are in the same week of the same block, week after week. */
interface InStep {
	readonly names: readonly string[]
	/** The title of the plan, where all have the same one. */
	readonly plan: string | null
	/** One for each of the team's weeks. */
	readonly weeks: readonly (MemberWeek | null)[]
}

/** Weeks of one block on end, or weeks on end without one. */
interface Stretch {
	/** `null`: between blocks. */
	readonly block: string | null
	readonly title: string
	readonly weeks: readonly (MemberWeek | null)[]
	/** Index of its first week. */
	readonly first: number
}

/** The whole season, block by block, a column for each calendar week. */
export function TeamWeeks({ team }: { team: TeamOverview }) {
	const reader = useContext(ReaderContext)
	const table = useRef<HTMLElement>(null)
	const now = team.today === null ? null : mondayOf(team.today)
	// A season is wider than the page: it opens where the team is.
	useLayoutEffect(() => {
		const column = table.current?.querySelector<HTMLElement>('thead .now')
		if (column) table.current!.scrollLeft = column.offsetLeft - table.current!.clientWidth / 2
	}, [])
	return (
		<>
			<p class="aside">{words.weeksAbout}</p>
			{/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than the page is moved with the keys */}
			<section class="weeks-table" aria-label={words.weeks} tabIndex={0} ref={table}>
				<table>
					<thead>
						<tr>
							<th scope="col" rowSpan={2}>
								{words.member}
							</th>
							{monthsOf(team.weeks).map(({ monday, weeks }) =>
								// A single week is too narrow for the name of a month.
								weeks === 1 ? (
									<td key={monday} />
								) : (
									<th key={monday} class="month" scope="colgroup" colSpan={weeks}>
										<bdi>{reader.month(monday)}</bdi>
									</th>
								),
							)}
						</tr>
						<tr>
							{team.weeks.map(monday => (
								<th scope="col" key={monday} class={monday === now ? 'now' : undefined}>
									<bdi>{reader.number(Number(monday.slice(8)))}</bdi>
									{monday === now && <span class="unseen">, {words.thisWeek}</span>}
								</th>
							))}
						</tr>
					</thead>
					{inStep(team).map(({ names, plan, weeks }, row) => (
						<tbody key={row}>
							<tr>
								<th scope="rowgroup" rowSpan={2}>
									<Who names={names} />{' '}
									{plan !== null && (
										<span class="aside">
											<bdi>{plan}</bdi>
										</span>
									)}
								</th>
								{stretchesOf(weeks).map(({ block, title, weeks: own, first }) => (
									<td key={first} class={`block${block === null ? '' : ' begins'}`} colSpan={own.length}>
										{block !== null && (
											<div title={title}>
												<bdi>{title}</bdi>
											</div>
										)}
									</td>
								))}
							</tr>
							<tr>
								{stretchesOf(weeks).flatMap(({ block, weeks: own, first }) =>
									own.map((week, index) => {
										const monday = team.weeks[first + index]!
										return (
											<td key={monday} class={cellClass(week, monday === now, block !== null && index === 0)}>
												{week !== null && <Week week={week} />}
											</td>
										)
									}),
								)}
							</tr>
						</tbody>
					))}
				</table>
			</section>
		</>
	)
}

function monthsOf(mondays: readonly string[]): { readonly monday: string; readonly weeks: number }[] {
	const months = Map.groupBy(mondays, monday => monday.slice(0, 7))
	return [...months.values()].map(weeks => ({ monday: weeks[0]!, weeks: weeks.length }))
}

/** Plans that say the same of every week, in the order of their first members; a plan without a week has no row. */
function inStep({ members }: TeamOverview): InStep[] {
	const plans = members.flatMap(member => member.plans.map(({ title, weeks }) => ({ name: member.title, title, weeks })))
	const groups = Map.groupBy(
		plans.filter(({ weeks }) => weeks.some(week => week !== null)),
		({ weeks }) => JSON.stringify(weeks),
	)
	return [...groups.values()].map(group => {
		const titles = new Set(group.map(({ title }) => title))
		return {
			names: group.map(({ name }) => name),
			plan: titles.size === 1 ? group[0]!.title : null,
			weeks: group[0]!.weeks,
		}
	})
}

function stretchesOf(weeks: readonly (MemberWeek | null)[]): Stretch[] {
	const stretches: (Stretch & { readonly weeks: (MemberWeek | null)[] })[] = []
	for (const [index, week] of weeks.entries()) {
		const block = week === null || week.week === null ? null : week.block
		const last = stretches.at(-1)
		// The same block once more begins again with its first week.
		const goesOn = last !== undefined && last.block === block && (block === null || (last.weeks.at(-1)?.week ?? 0) < week!.week!)
		if (goesOn) last.weeks.push(week)
		else stretches.push({ block, title: week?.blockTitle ?? '', weeks: [week], first: index })
	}
	return stretches
}

/** So many names are read at a glance; more of them stand above, each with its plan. */
const mostNames = 4

function Who({ names }: { names: readonly string[] }) {
	if (names.length > mostNames) return <span title={names.join(', ')}>{counted.member(names.length)}</span>
	return (
		<span>
			{names.map((name, index) => (
				<span key={index}>
					{index > 0 && ', '}
					<bdi>{name}</bdi>
				</span>
			))}
		</span>
	)
}

function cellClass(week: MemberWeek | null, isNow: boolean, begins: boolean): string {
	const classes = [
		'cell',
		week !== null && week.week !== null && 'on',
		week?.deload && 'lighter',
		isNow && 'now',
		begins && 'begins',
	]
	return classes.filter(Boolean).join(' ')
}

function Week({ week: { week, of, deload, meets } }: { week: MemberWeek }) {
	const reader = useContext(ReaderContext)
	return (
		<>
			{week !== null && (
				<span class="number">
					<span aria-hidden="true">{reader.number(week)}</span>
					<span class="unseen">
						{words.weekOf(reader.number(week), reader.number(of))}
						{deload && `, ${words.lighter}`}
					</span>
				</span>
			)}
			{meets.map((title, index) => (
				<span class="meet" key={index} title={title || words.meet}>
					<span aria-hidden="true">◆</span>
					<span class="unseen">
						{' '}
						<bdi>{title || words.meet}</bdi>
					</span>
				</span>
			))}
		</>
	)
}
