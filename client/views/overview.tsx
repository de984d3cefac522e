import { useContext } from 'preact/hooks'
import type { LoadSheet } from '../../language/reports/load-sheet.ts'
import type { PreviewMeet, Titles } from '../../language/reports/preview.ts'
import { counted } from './counted.ts'
import { ReaderContext } from './reader/context.ts'
import { blockTitle } from './reader/words.ts'
import { weekAnchor } from './sheet/week-section.tsx'
import { mondayOf, type SheetWeek, weeksOf } from './sheet/weeks.ts'
import { pageWords as words } from './words.ts'

const height = 52
const step = 11
const stroke = 6

/** The whole plan in one line: a week a column, a session a stroke as tall as it is long. Each week leads to its sheet. */
export function Overview({ sheet, titles, meets }: { sheet: LoadSheet; titles: Titles; meets: readonly PreviewMeet[] }) {
	const longest = Math.max(1, ...sheet.sessions.map(session => session.minutes))
	return (
		<nav class="overview" aria-label={words.weeks}>
			<ol>
				{stretchesOf(weeksOf(sheet)).map(({ block, weeks }) => (
					<li key={weeks[0]!.monday}>
						<ol>
							{weeks.map(week => (
								<Week
									key={week.monday}
									week={week}
									longest={longest}
									meet={meets.find(meet => mondayOf(meet.date) === week.monday)}
								/>
							))}
						</ol>
						<span class="block">
							<bdi>{blockTitle(titles, block)}</bdi>
						</span>
					</li>
				))}
			</ol>
		</nav>
	)
}

/** Neighbouring weeks that begin with the same block. */
function stretchesOf(weeks: readonly SheetWeek[]): { readonly block: string; readonly weeks: SheetWeek[] }[] {
	const stretches: { block: string; weeks: SheetWeek[] }[] = []
	for (const week of weeks) {
		const { block } = week.sessions[0]!.session
		const last = stretches.at(-1)
		if (last?.block === block) last.weeks.push(week)
		else stretches.push({ block, weeks: [week] })
	}
	return stretches
}

function Week({ week, longest, meet }: { week: SheetWeek; longest: number; meet: PreviewMeet | undefined }) {
	const reader = useContext(ReaderContext)
	const width = week.sessions.length * step
	return (
		<li class={week.deload ? 'lighter' : undefined}>
			<a href={`#${weekAnchor(week.week)}`}>
				<svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
					{week.sessions.map(({ index, session }, place) => {
						const tall = Math.max(4, Math.round((height * session.minutes) / longest))
						return (
							<rect key={index} x={place * step + (step - stroke) / 2} y={height - tall} width={stroke} height={tall} rx="1" />
						)
					})}
				</svg>
				<span class="number">
					<span class="unseen">{words.week} </span>
					{reader.number(week.week)}
					{meet && (
						<span class="meet" title={meet.title || words.meet} aria-hidden="true">
							{' ◆'}
						</span>
					)}
				</span>
				<span class="unseen">
					, {counted.session(week.sessions.length)}
					{week.deload && `, ${words.lighter}`}
					{meet && `, ${words.meetToo}`}
				</span>
			</a>
		</li>
	)
}
