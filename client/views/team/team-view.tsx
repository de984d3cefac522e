import { useContext } from 'preact/hooks'
import type { Place } from '../../../language/reports/preview.ts'
import type { TeamOverview } from '../../../language/reports/team-overview.ts'
import { Cautions } from '../cautions.tsx'
import { counted } from '../counted.ts'
import { ProblemsList, problemsAnchor, problemsInShort } from '../problems-list.tsx'
import { ReaderContext } from '../reader/context.ts'
import { pageWords } from '../words.ts'
import { TeamNow } from './team-now.tsx'
import { TeamWeeks } from './team-weeks.tsx'
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
				<h1>
					<bdi>{team.title}</bdi>
				</h1>
				<ul class="facts">
					<li>{counted.member(members.length)}</li>
					{today !== null && <li>{words.today(reader.days(today, today))}</li>}
					<li>
						<a href={`#${problemsAnchor}`}>{open || pageWords.noProblems}</a>
					</li>
				</ul>
			</header>
			<section class="team" id="members">
				<h2>{words.now}</h2>
				{members.length === 0 ? <p class="empty">{words.nobody}</p> : <TeamNow team={team} pick={pick} />}
			</section>
			<section class="team" id="weeks">
				<h2>{words.weeks}</h2>
				{team.weeks.length === 0 ? <p class="empty">{words.empty}</p> : <TeamWeeks team={team} />}
			</section>
			<ProblemsList problems={problems} go={go} concerns={concerned} />
			<Cautions cautions={[]} />
		</main>
	)
}
