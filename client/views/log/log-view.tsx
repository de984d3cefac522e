import { useContext } from 'preact/hooks'
import type { LogItem, LogSession, LogWeek, PlannedAgainstDone } from '../../../language/reports/planned-against-done.ts'
import type { Place } from '../../../language/reports/preview.ts'
import { Cautions } from '../cautions.tsx'
import { sessionLoadsDrawing } from '../charts/session-loads.ts'
import { counted } from '../counted.ts'
import { ReaderContext } from '../reader/context.ts'
import { spokenName } from '../reader/words.ts'
import { Day } from '../sheet/day.tsx'
import { foldSets } from '../sheet/fold.ts'
import { shift } from '../sheet/weeks.ts'
import { effortOf, loadOf, percentOf, setsAndWork } from '../sheet/wording.ts'
import { Figure } from '../volume/chart-figure.tsx'
import { type DoneLine, doneLines } from './done.ts'
import { logWords as words } from './words.ts'

export interface LogViewProps {
	readonly log: PlannedAgainstDone
	/** Goes to a place in the text; `null` where there is no editor. */
	readonly go: ((place: Place) => void) | null
}

/** A lifter's log beside the plans: what was planned, what was done, and how it felt; the last week first. */
export function LogView({ log, go }: LogViewProps) {
	const reader = useContext(ReaderContext)
	const { weeks } = log
	const sum = (of: 'planned' | 'done') => weeks.reduce((all, week) => all + week[of], 0)
	const first = weeks[0]
	const last = weeks.at(-1)
	return (
		<main>
			<header class="masthead">
				<p class="lifter">{words.heading}</p>
				<h1>
					<bdi>{log.title}</bdi>
				</h1>
				<ul class="facts">
					<li>{words.about}</li>
					{first && last && <li>{reader.days(first.monday, shift(last.monday, 6))}</li>}
					{weeks.length > 0 && <li>{words.doneOf(reader.number(sum('done')), reader.number(sum('planned')))}</li>}
				</ul>
			</header>
			{weeks.length === 0 && <p class="empty">{words.empty}</p>}
			{weeks.some(({ load }) => load !== null) && <LoadFigure weeks={weeks} />}
			{[...weeks].reverse().map(week => (
				<Week key={week.monday} week={week} go={go} />
			))}
			<Cautions cautions={[]} />
		</main>
	)
}

function LoadFigure({ weeks }: { weeks: readonly LogWeek[] }) {
	const reader = useContext(ReaderContext)
	const labels = weeks.map(({ monday }) => reader.day(monday))
	const amounts = weeks.map(({ load }) => (load === null ? null : { low: load.total, high: load.total }))
	return (
		<section class="totals" id="load">
			<h2>{words.load}</h2>
			<Figure
				name="session-load"
				title={null}
				about={words.loadAbout}
				drawing={sessionLoadsDrawing({ name: words.loadName, unit: null, amounts }, labels, reader)}
				span="page"
				table={<LoadTable weeks={weeks} />}
			/>
		</section>
	)
}

function LoadTable({ weeks }: { weeks: readonly LogWeek[] }) {
	const reader = useContext(ReaderContext)
	const number = (value: string | null | undefined) => (value === null || value === undefined ? '–' : reader.number(value))
	const rows = [
		{ name: words.plannedName, values: weeks.map(({ planned }) => reader.number(planned)) },
		{ name: words.doneName, values: weeks.map(({ done }) => reader.number(done)) },
		{ name: words.loadName, values: weeks.map(({ load }) => number(load?.total)) },
		{ name: words.monotony, values: weeks.map(({ load }) => number(load?.monotony)) },
		{ name: words.strain, values: weeks.map(({ load }) => number(load?.strain)) },
	]
	return (
		// biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than the page is moved with the keys
		<section class="numbers" aria-label={words.load} tabIndex={0}>
			<table>
				<thead>
					<tr>
						<th scope="col">{words.week}</th>
						{weeks.map(({ monday }) => (
							<th scope="col" key={monday}>
								<bdi>{reader.day(monday)}</bdi>
							</th>
						))}
					</tr>
				</thead>
				<tbody>
					{rows.map(({ name, values }) => (
						<tr key={name}>
							<th scope="row">{name}</th>
							{values.map((value, index) => (
								<td key={weeks[index]!.monday}>{value}</td>
							))}
						</tr>
					))}
				</tbody>
			</table>
		</section>
	)
}

function Week({ week, go }: { week: LogWeek; go: LogViewProps['go'] }) {
	const reader = useContext(ReaderContext)
	const { monday, planned, done, load, sessions } = week
	return (
		<section class="week logged" id={`week-${monday}`}>
			<header>
				<h2>{words.weekOf(reader.days(monday, shift(monday, 6)))}</h2>
				<p class="blocks">
					{planned > 0 && <span>{words.doneOf(reader.number(done), reader.number(planned))}</span>}
					{load !== null && (
						<span>
							{words.weekLoad(reader.number(load.total))}
							{load.unrated > 0 && `, ${words.unrated(counted.session(load.unrated))}`}
						</span>
					)}
				</p>
			</header>
			<table>
				<thead>
					<tr>
						<th scope="col" class="for-day">
							{words.day}
						</th>
						<th scope="col">{words.movement}</th>
						<th scope="col">{words.planned}</th>
						<th scope="col">{words.done}</th>
					</tr>
				</thead>
				{sessions.map((session, index) => (
					<SessionOfLog key={`${session.date} ${index}`} session={session} go={go} />
				))}
			</table>
		</section>
	)
}

function SessionOfLog({ session, go }: { session: LogSession; go: LogViewProps['go'] }) {
	const reader = useContext(ReaderContext)
	const { date, state, items, felt, place } = session
	const name = session.title ?? (session.session === null ? words.session : spokenName(session.session))
	const day = <Day date={date} part={null} />
	return (
		<tbody class={`session is-${state}`}>
			<tr class="session-head">
				<th class="day" scope="rowgroup" rowSpan={items.length + 1}>
					{day}
				</th>
				<td colSpan={3}>
					<span class="day-inline">{day}</span>
					<h3>
						{go !== null && place !== null ? (
							<button type="button" class="to-text" title={words.toText} onClick={() => go(place)}>
								<bdi>{name}</bdi>
							</button>
						) : (
							<bdi>{name}</bdi>
						)}
					</h3>
					{state === 'missed' && <span class="tag missed">{words.missed}</span>}
					{state === 'not-logged' && <span class="tag missed">{words.notLogged}</span>}
					{state === 'beside-the-plan' && <span class="tag">{words.besidePlan}</span>}
					<span class="aside">
						{felt !== null &&
							words.felt(reader.number(felt.rating), `${reader.number(felt.minutes)}\u00a0min`, reader.number(felt.load))}
						{session.plannedOn !== null && ` ${words.plannedOn(reader.day(session.plannedOn))}`}
						{session.because !== null && <bdi> {session.because}</bdi>}
					</span>
					{session.hurt.map((what, index) => (
						<span class="remark hurt" key={index}>
							<bdi>{words.hurt(what)}</bdi>
						</span>
					))}
					{session.notes.map((note, index) => (
						<span class="remark" dir="auto" key={index}>
							{note}
						</span>
					))}
				</td>
			</tr>
			{items.map((item, index) => (
				<Item key={index} item={item} go={go} />
			))}
		</tbody>
	)
}

function Item({ item: { title, planned, done, place }, go }: { item: LogItem; go: LogViewProps['go'] }) {
	const reader = useContext(ReaderContext)
	return (
		<tr class={`sets ${planned?.role ?? 'accessory'}`}>
			<th scope="row" class={`movement ${planned?.role ?? 'accessory'}`}>
				<span class="name" dir="auto">
					{title}
				</span>
			</th>
			<td class="planned">
				<span class="in-words">{words.planned} </span>
				{planned === null ? (
					<span class="aside">{words.notPlanned}</span>
				) : (
					foldSets(planned.sets).map((fold, index) => (
						<Line
							key={index}
							work={setsAndWork(fold, reader)}
							load={loadOf(fold.set, planned, reader) ?? percentOf(fold.set, reader)}
							facts={[...(fold.set.eachSide ? [words.eachSide] : []), ...[effortOf(fold.set, reader) ?? []].flat()]}
						/>
					))
				)}
			</td>
			<td class="was-done">
				<span class="in-words">{words.done} </span>
				{done.length === 0 ? (
					<span class="aside">{words.nothingDone}</span>
				) : go !== null && place !== null ? (
					<button type="button" class="to-text" title={words.toText} onClick={() => go(place)}>
						<DoneOf done={done} />
					</button>
				) : (
					<DoneOf done={done} />
				)}
			</td>
		</tr>
	)
}

function DoneOf({ done }: { done: LogItem['done'] }) {
	const reader = useContext(ReaderContext)
	return (
		<>
			{doneLines(done, reader).map((line, index) => (
				<Line key={index} {...line} />
			))}
		</>
	)
}

function Line({ work, load, facts }: DoneLine) {
	return (
		<span class="line">
			<span class="done-work">{work}</span> {load !== null && <strong>{load}</strong>}{' '}
			{facts.map(fact => (
				<bdi class="aside" key={fact}>
					{fact}{' '}
				</bdi>
			))}
		</span>
	)
}
