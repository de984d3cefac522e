import type { ComponentChildren } from 'preact'
import { useContext } from 'preact/hooks'
import type { Drawing } from '../charts/drawing.ts'
import { SurfaceContext } from '../charts/surface.ts'
import { ReaderContext } from '../reader/context.ts'
import { unlessChanged, useUnchanged } from '../unchanged.ts'
import { amountText } from './amounts.ts'
import type { Measure, WeekColumn } from './measures.ts'
import { volumeWords as words } from './words.ts'

export interface FigureProps {
	readonly name: string
	/** `null` where the heading above says it. */
	readonly title: string | null
	/** What the picture shows, in a few words. */
	readonly about: string
	readonly drawing: Drawing
	readonly span: 'page' | 'half'
	/** What the picture says, for who does not see it: the same data. */
	readonly table: ComponentChildren
	/** The key to the colours. */
	readonly children?: ComponentChildren
}

/** A chart with its heading, its key and its table. */
export function Figure({ name, title, about, drawing, span, table, children }: FigureProps) {
	const Surface = useContext(SurfaceContext)
	return (
		<figure class={`chart ${span}`}>
			<figcaption>
				{title !== null && (
					<h3>
						<bdi>{title}</bdi>
					</h3>
				)}
				<p class="aside">{about}</p>
			</figcaption>
			{children}
			{/* The table says all of it, so the picture is silent. */}
			<div class="drawing" aria-hidden="true">
				<Surface drawing={drawing} name={name} span={span} />
			</div>
			{table}
		</figure>
	)
}

export interface ChartFigureProps extends Omit<FigureProps, 'table'> {
	readonly title: string
	readonly weeks: readonly WeekColumn[]
	/** The rows of the table: the same measures that the chart draws. */
	readonly rows: readonly Measure[]
}

/** A chart over weeks with its numbers as a table. */
export function ChartFigure({ weeks, rows, ...figure }: ChartFigureProps) {
	const { title } = figure
	const shown = useUnchanged(rows)
	const table = (
		<details>
			<summary>
				{words.numbers}
				<span class="unseen"> {words.numbersOf(title)}</span>
			</summary>
			<NumbersTable title={title} weeks={weeks} rows={shown} />
		</details>
	)
	return <Figure {...figure} table={table} />
}

type NumbersTableProps = Pick<ChartFigureProps, 'title' | 'weeks' | 'rows'>

const NumbersTable = unlessChanged(function NumbersTable({ title, weeks, rows }: NumbersTableProps) {
	const reader = useContext(ReaderContext)
	return (
		// biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than the page is moved with the keys
		<section class="numbers" aria-label={title} tabIndex={0}>
			<table>
				<thead>
					<tr>
						<th scope="col">{words.week}</th>
						{weeks.map(({ week, deload }) => (
							<th scope="col" key={week}>
								{reader.number(week)}
								{deload && <span class="unseen">{words.lighterColumn}</span>}
							</th>
						))}
					</tr>
				</thead>
				<tbody>
					{rows.map(({ name, unit, amounts }) => (
						<tr key={name}>
							<th scope="row">{name}</th>
							{amounts.map((amount, index) => (
								<td key={weeks[index]?.week}>{amountText(amount, unit, reader)}</td>
							))}
						</tr>
					))}
				</tbody>
			</table>
		</section>
	)
})
