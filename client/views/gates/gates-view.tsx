import { useContext } from 'preact/hooks'
import type { PlanCalendar } from '../../../language/reports/calendar.ts'
import type { GateOnTimeline } from '../../../language/reports/gate-timeline.ts'
import type { Place, Titles } from '../../../language/reports/preview.ts'
import { gateTimelineDrawing } from '../charts/gate-timeline.ts'
import { ReaderContext } from '../reader/context.ts'
import type { Reader } from '../reader/reader.ts'
import { blockTitle } from '../reader/words.ts'
import { daysFrom } from '../sheet/weeks.ts'
import { unlessChanged } from '../unchanged.ts'
import { Figure } from '../volume/chart-figure.tsx'
import { Key, KeyEntry } from '../volume/key.tsx'
import { gateWords as words } from './words.ts'

export interface GatesViewProps {
	readonly gates: readonly GateOnTimeline[]
	readonly calendar: PlanCalendar
	readonly titles: Titles
	readonly go: ((place: Place) => void) | null
}

/** What was passed when, what is needed when, and what is open. */
export const GatesView = unlessChanged(function GatesView({ gates, calendar, titles, go }: GatesViewProps) {
	const [first] = calendar.weeks
	const last = calendar.weeks.at(-1)
	if (gates.length === 0 || first === undefined || last === undefined) return null
	const column = (date: string) => Math.min(last.week, Math.max(0, Math.floor(daysFrom(first.monday, date) / 7) + 1))
	const lighter = new Set(
		calendar.weeks.filter(({ blocks }) => blocks.length > 0 && blocks.every(({ deload }) => deload)).map(({ week }) => week),
	)
	const weeks = Array.from({ length: last.week }, (_, index) => ({
		label: String(index + 1),
		deload: lighter.has(index + 1),
	}))
	const tracks = gates.map(({ text, state, passedOn, plannedOn, neededOn }) => {
		const shown = state === 'passed' ? (passedOn === null ? 0 : column(passedOn)) : plannedOn === null ? null : column(plannedOn)
		return { text, state, shown, needed: column(neededOn) }
	})
	const has = (state: GateOnTimeline['state']) => gates.some(gate => gate.state === state)
	return (
		<section class="gates" id="gates">
			<h2>{words.heading}</h2>
			<Figure
				name="gates"
				title={null}
				about={words.about}
				drawing={gateTimelineDrawing(tracks, weeks, words.before)}
				span="page"
				table={<GatesTable gates={gates} titles={titles} go={go} />}
			>
				<Key>
					{has('passed') && <KeyEntry swatch="passed">{words.passed}</KeyEntry>}
					{has('planned') && <KeyEntry swatch="planned">{words.planned}</KeyEntry>}
					{has('open') && <KeyEntry swatch="open">{words.open}</KeyEntry>}
					<KeyEntry swatch="due">{words.due}</KeyEntry>
				</Key>
			</Figure>
		</section>
	)
})

function GatesTable({ gates, titles, go }: Omit<GatesViewProps, 'calendar'>) {
	const reader = useContext(ReaderContext)
	return (
		<table class="listed">
			<thead>
				<tr>
					<th scope="col">{words.gate}</th>
					<th scope="col">{words.neededFor}</th>
					<th scope="col">{words.state}</th>
				</tr>
			</thead>
			<tbody>
				{gates.map(gate => (
					<tr key={gate.text} class={gate.state}>
						<th scope="row" dir="auto">
							{go !== null && gate.place !== null ? (
								<button type="button" class="to-text" title={words.toText} onClick={() => go(gate.place!)}>
									{gate.text}
								</button>
							) : (
								gate.text
							)}
							{gate.source !== null && (
								<span class="aside">
									{' '}
									<bdi>{words.source(gate.source)}</bdi>
								</span>
							)}
						</th>
						<td>
							<span dir="auto">
								{gate.before.length > 0 ? gate.before.join(', ') : words.blockItself(blockTitle(titles, gate.block))}
							</span>{' '}
							<span class="aside">{words.neededOn(reader.days(gate.neededOn, gate.neededOn))}</span>
						</td>
						<td class="state">{stateText(gate, reader)}</td>
					</tr>
				))}
			</tbody>
		</table>
	)
}

function stateText({ state, passedOn, shownBy, plannedOn, nearest }: GateOnTimeline, reader: Reader): string {
	const on = (date: string) => reader.days(date, date)
	if (state === 'passed') {
		const when = passedOn === null ? words.passedBefore : words.passedOn(on(passedOn))
		return `${when}${shownBy === null ? '' : words.shownBy[shownBy]}`
	}
	const soFar =
		nearest === null ? [] : [nearest.on === null ? words.nearest(nearest.text) : words.nearestOn(nearest.text, on(nearest.on))]
	const first = state === 'planned' && plannedOn !== null ? words.plannedOn(on(plannedOn)) : words.openState
	return [first, ...soFar].join('; ')
}
