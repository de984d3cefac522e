import { useContext } from 'preact/hooks'
import type { Place, PreviewProblem } from '../../../language/reports/preview.ts'
import type { MemberPlan, MemberWeek, TeamMember, TeamOverview } from '../../../language/reports/team-overview.ts'
import { Cautions } from '../cautions.tsx'
import { counted } from '../counted.ts'
import { ProblemsList, problemsAnchor, problemsInShort } from '../problems-list.tsx'
import { ReaderContext } from '../reader/context.ts'
import { mondayOf } from '../sheet/weeks.ts'
import { pageWords } from '../words.ts'
import { teamWords as words } from './words.ts'

export interface TeamViewProps {
	readonly team: TeamOverview
	/** Goes to a place in the text; `null` where there is no editor. */
	readonly go: ((place: Place) => void) | null
	/** Shows a member's plan; `null` where a page shows nothing else. */
	readonly pick: ((plan: string) => void) | null
}

/** A team: who is in which week of which block, and whose plan has problems. */
export function TeamView({ team, go, pick }: TeamViewProps) {
	const reader = useContext(ReaderContext)
	const { members, problems, today } = team
	const open = problemsInShort(problems)
	const concerned = problems.map((_, index) => {
		const names = members.filter(({ plans }) => plans.some(plan => plan.problems.includes(index))).map(({ title }) => title)
		return words.concerns(names.join(', '))
	})
	return (
		<main>
			<header class="masthead">
				<p class="lifter">{words.heading}</p>
				<h1 dir="auto">{team.title}</h1>
				<ul class="facts">
					<li>{counted.member(members.length)}</li>
					{today !== null && <li>{words.today(reader.days(today, today))}</li>}
					<li>
						<a href={`#${problemsAnchor}`}>{open || pageWords.noProblems}</a>
					</li>
				</ul>
			</header>
			<section class="team" id="members">
				<h2>{words.weeks}</h2>
				{team.weeks.length === 0 ? <p class="empty">{words.empty}</p> : <p class="aside">{words.tableAbout}</p>}
				<WeeksTable team={team} pick={pick} />
			</section>
			<ProblemsList problems={problems} go={go} concerns={concerned} />
			<Cautions cautions={[]} />
		</main>
	)
}

function WeeksTable({ team, pick }: Pick<TeamViewProps, 'team' | 'pick'>) {
	const reader = useContext(ReaderContext)
	const now = team.today === null ? null : mondayOf(team.today)
	return (
		// biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than the page is moved with the keys
		<section class="weeks-table" aria-label={words.weeks} tabIndex={0}>
			<table>
				<thead>
					<tr>
						<th scope="col">{words.member}</th>
						<th scope="col">{words.problems}</th>
						{team.weeks.map(monday => (
							<th scope="col" key={monday} class={monday === now ? 'now' : undefined}>
								<bdi>{reader.day(monday)}</bdi>
								{monday === now && <span class="unseen">, {words.now}</span>}
							</th>
						))}
					</tr>
				</thead>
				<tbody>
					{team.members.flatMap(member =>
						member.plans.length === 0
							? [<NoPlan key={member.lifter} member={member} columns={team.weeks.length} />]
							: member.plans.map(plan => (
									<PlanRow
										key={`${member.lifter} ${plan.plan}`}
										member={member}
										plan={plan}
										problems={plan.problems.flatMap(index => team.problems[index] ?? [])}
										weeks={team.weeks}
										now={now}
										pick={pick}
									/>
								)),
					)}
				</tbody>
			</table>
		</section>
	)
}

function NoPlan({ member, columns }: { member: TeamMember; columns: number }) {
	return (
		<tr>
			<th scope="row" dir="auto">
				{member.title}
			</th>
			<td colSpan={columns + 1} class="aside">
				{words.noPlan}
			</td>
		</tr>
	)
}

interface PlanRowProps {
	readonly member: TeamMember
	readonly plan: MemberPlan
	readonly problems: readonly PreviewProblem[]
	readonly weeks: readonly string[]
	readonly now: string | null
	readonly pick: ((plan: string) => void) | null
}

function PlanRow({ member, plan, problems, weeks, now, pick }: PlanRowProps) {
	const worst = (['error', 'warning', 'info'] as const).find(level => problems.some(problem => problem.level === level))
	return (
		<tr>
			<th scope="row">
				<span dir="auto">{member.title}</span>
				{pick === null ? (
					<span class="aside" dir="auto">
						{plan.title}
					</span>
				) : (
					<button type="button" class="to-text aside" title={words.showPlan(plan.title)} onClick={() => pick(plan.plan)}>
						<span dir="auto">{plan.title}</span>
					</button>
				)}
			</th>
			<td class={`problems ${worst ?? ''}`}>{problemsInShort(problems) || words.noProblems}</td>
			{plan.weeks.map((week, index) => {
				const monday = weeks[index]!
				const before = plan.weeks[index - 1]
				const begins = week !== null && week.block !== before?.block
				return (
					<td key={monday} class={cellClass(week, monday === now, begins)}>
						{week !== null && <Week week={week} begins={begins} />}
					</td>
				)
			})}
		</tr>
	)
}

function cellClass(week: MemberWeek | null, isNow: boolean, begins: boolean): string {
	return [
		'cell',
		week === null ? 'off' : week.week === null ? '' : 'on',
		week?.deload ? 'lighter' : '',
		isNow ? 'now' : '',
		begins ? 'begins' : '',
	]
		.filter(Boolean)
		.join(' ')
}

function Week({ week: { week, of, blockTitle, deload, meets }, begins }: { week: MemberWeek; begins: boolean }) {
	const reader = useContext(ReaderContext)
	return (
		<>
			{begins && week !== null && (
				<span class="block" dir="auto">
					{blockTitle}
				</span>
			)}
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
					<span class="unseen" dir="auto">
						{' '}
						{title || words.meet}
					</span>
				</span>
			))}
		</>
	)
}
