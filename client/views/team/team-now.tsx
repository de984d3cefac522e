import { useContext } from 'preact/hooks'
import type { PreviewProblem } from '../../../language/reports/preview.ts'
import type { MemberPlan, MemberWeek, TeamMember, TeamOverview } from '../../../language/reports/team-overview.ts'
import { counted } from '../counted.ts'
import { problemsAnchor, problemsInShort } from '../problems-list.tsx'
import { ReaderContext } from '../reader/context.ts'
import { daysFrom, mondayOf } from '../sheet/weeks.ts'
import { teamWords as words } from './words.ts'

export interface TeamNowProps {
	readonly team: TeamOverview
	/** Shows a member's plan; `null` where a page shows nothing else. */
	readonly pick: ((plan: string) => void) | null
}

/** A row for each plan of each member: where it is this week, the meet that comes next, and what is open. */
export function TeamNow({ team, pick }: TeamNowProps) {
	const now = team.today === null ? null : mondayOf(team.today)
	const hasMeets = team.members.some(({ plans }) => plans.some(({ weeks }) => weeks.some(week => week?.meets.length)))
	return (
		<table class="listed now">
			<thead>
				<tr>
					<th scope="col">{words.member}</th>
					<th scope="col">{words.plan}</th>
					{now !== null && <th scope="col">{words.thisWeekHead}</th>}
					{now !== null && hasMeets && <th scope="col">{words.next}</th>}
					<th scope="col">{words.problems}</th>
				</tr>
			</thead>
			{team.members.map(member => (
				<tbody key={member.lifter}>
					{member.plans.length === 0 ? (
						<tr>
							<Name member={member} rows={1} />
							<td class="aside" colSpan={now === null ? 2 : hasMeets ? 4 : 3}>
								{words.noPlan}
							</td>
						</tr>
					) : (
						member.plans.map((plan, index) => (
							<tr key={plan.plan}>
								{index === 0 && <Name member={member} rows={member.plans.length} />}
								<td>
									<PlanTitle plan={plan} pick={pick} />
								</td>
								{now !== null && (
									<td>
										<WeekNow plan={plan} weeks={team.weeks} now={now} />
									</td>
								)}
								{now !== null && hasMeets && (
									<td>
										<NextMeet plan={plan} weeks={team.weeks} now={now} />
									</td>
								)}
								<OpenProblems problems={plan.problems.flatMap(index => team.problems[index] ?? [])} />
							</tr>
						))
					)}
				</tbody>
			))}
		</table>
	)
}

function Name({ member, rows }: { member: TeamMember; rows: number }) {
	return (
		<th scope="rowgroup" rowSpan={rows}>
			<bdi>{member.title}</bdi>
		</th>
	)
}

function PlanTitle({ plan, pick }: { plan: MemberPlan; pick: TeamNowProps['pick'] }) {
	const title = <bdi>{plan.title}</bdi>
	if (pick === null) return title
	return (
		<button type="button" class="to-text" title={words.showPlan(plan.title)} onClick={() => pick(plan.plan)}>
			{title}
		</button>
	)
}

interface PlanNow {
	readonly plan: MemberPlan
	/** Mondays of the plan's weeks. */
	readonly weeks: readonly string[]
	/** The monday of this week. */
	readonly now: string
}

function WeekNow({ plan, weeks, now }: PlanNow) {
	const reader = useContext(ReaderContext)
	const own = weeks.filter((_, index) => plan.weeks[index] !== null)
	const [first] = own
	const last = own.at(-1)
	if (first === undefined || last === undefined) return <span class="aside">{words.noWeeks}</span>
	if (now < first) return <span class="aside">{words.begins(reader.days(first, first))}</span>
	if (now > last) return <span class="aside">{words.ended(reader.days(last, last))}</span>
	const week = plan.weeks[weeks.indexOf(now)] ?? null
	return week === null || week.week === null ? <span class="aside">{words.between}</span> : <OfBlock week={week} n={week.week} />
}

function OfBlock({ week, n }: { week: MemberWeek; n: number }) {
	const reader = useContext(ReaderContext)
	return (
		<>
			<bdi>{week.blockTitle}</bdi> <span class="aside">{words.weekOf(reader.number(n), reader.number(week.of))}</span>{' '}
			{week.deload && <span class="tag">{words.lighter}</span>}
		</>
	)
}

function NextMeet({ plan, weeks, now }: PlanNow) {
	const index = weeks.findIndex((monday, place) => monday >= now && plan.weeks[place]?.meets.length)
	const [title] = plan.weeks[index]?.meets ?? []
	const monday = weeks[index]
	if (title === undefined || monday === undefined) return null
	const weeksAway = daysFrom(now, monday) / 7
	return (
		<>
			<span class="meet" aria-hidden="true">
				◆{' '}
			</span>
			<bdi>{title || words.meet}</bdi>{' '}
			<span class="aside">{weeksAway === 0 ? words.thisWeek : words.meetIn(counted.week(weeksAway))}</span>
		</>
	)
}

function OpenProblems({ problems }: { problems: readonly PreviewProblem[] }) {
	const worst = (['error', 'warning', 'info'] as const).find(level => problems.some(problem => problem.level === level))
	return (
		<td class={`state ${worst ?? ''}`}>
			{problems.length === 0 ? words.noProblems : <a href={`#${problemsAnchor}`}>{problemsInShort(problems)}</a>}
		</td>
	)
}
