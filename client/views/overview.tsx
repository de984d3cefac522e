import { useContext } from 'preact/hooks'
import type { LoadSheet } from '../../language/reports/load-sheet.ts'
import type { PreviewMeet } from '../../language/reports/preview.ts'
import { ReaderContext } from './reader/context.ts'
import { counted } from './reader/words.ts'
import { weekAnchor } from './sheet/week-section.tsx'
import { mondayOf, type SheetWeek, weeksOf } from './sheet/weeks.ts'

const height = 40
const step = 9
const stroke = 5

/** The whole plan in one line: a week a column, a session a stroke as tall as it is long. Each week leads to its sheet. */
export function Overview({ sheet, meets }: { sheet: LoadSheet; meets: readonly PreviewMeet[] }) {
	const weeks = weeksOf(sheet)
	const longest = Math.max(1, ...sheet.sessions.map(session => session.minutes))
	return (
		<nav class="overview" aria-label="Weeks">
			<ol>
				{weeks.map(week => (
					<Week key={week.monday} week={week} longest={longest} meet={meets.find(meet => mondayOf(meet.date) === week.monday)} />
				))}
			</ol>
		</nav>
	)
}

function Week({ week, longest, meet }: { week: SheetWeek; longest: number; meet: PreviewMeet | undefined }) {
	const reader = useContext(ReaderContext)
	const width = Math.max(1, week.sessions.length) * step
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
					<span class="unseen">Week </span>
					{reader.number(week.week)}
				</span>
				<span class="unseen">
					, {counted(week.sessions.length, 'session')}
					{week.deload && ', lighter week'}
				</span>
				{meet && (
					<span class="meet" title={meet.title || 'Meet'}>
						<span aria-hidden="true">◆</span>
						<span class="unseen">, meet</span>
					</span>
				)}
			</a>
		</li>
	)
}
