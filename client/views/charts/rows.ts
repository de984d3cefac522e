import type { Reader } from '../reader/reader.ts'
import type { NeedMeasure, WeekColumn } from '../volume/measures.ts'
import { type ChartOption, type Drawing, ink } from './drawing.ts'
import { type BarLook, base, borderAxis, ceiling, heightAxis, needBars, needLine, weekAxis } from './parts.ts'

/** One row of bars: what is drawn, what stands under its name, and its colours. */
export interface Row {
	readonly measure: NeedMeasure
	readonly under: string | null
	readonly look: Pick<BarLook, 'color' | 'rest' | 'inside'>
}

/** Letters that a name may take before it goes on in the next line. */
const lineLength = 18

/** A row of bars for each measure, all on one scale; on a wide surface in two columns. */
export function rowsDrawing(rows: readonly Row[], weeks: readonly WeekColumn[], reader: Reader): Drawing {
	return surface => {
		const labels = rows.map(({ measure, under }) => ({
			name: linesOf(measure.name),
			under: under === null ? [] : linesOf(under),
		}))
		const longest = Math.max(...labels.flatMap(({ name, under }) => [...name, ...under]).map(line => line.length), 8)
		const most = Math.max(...labels.map(({ name, under }) => name.length + under.length))
		const names = Math.round(longest * surface.fontSize * 0.6) + 14
		const gap = 24
		// Two columns where the numbers of all weeks have room in a half.
		const isWide = surface.width >= 600 && surface.width / 2 - gap - names >= weeks.length * surface.fontSize * 1.6
		const columns = isWide && rows.length > 1 ? 2 : 1
		const perColumn = Math.ceil(rows.length / columns)
		const width = (surface.width - gap * (columns - 1)) / columns
		const bars = Math.round(surface.fontSize * Math.max(3.5, most * 1.35))
		const row = bars + Math.round(surface.fontSize * 0.9)
		// The first row's numbers reach above its own bars.
		const head = Math.round(surface.fontSize * 0.5)
		const foot = Math.round(surface.fontSize * 1.9)
		// Headroom keeps the numbers of the highest bars inside their own row.
		const max = ceiling(rows.map(({ measure }) => measure)) * 1.4

		const grid: ChartOption['grid'] & object[] = []
		const xAxis: ChartOption['xAxis'] & object[] = []
		const yAxis: ChartOption['yAxis'] & object[] = []
		const series: ChartOption['series'] & object[] = []
		rows.forEach(({ measure, look }, index) => {
			const column = Math.floor(index / perColumn)
			const place = index % perColumn
			const last = place === perColumn - 1 || index === rows.length - 1
			grid.push({
				id: measure.name,
				left: column * (width + gap) + names,
				width: width - names,
				top: head + place * row,
				height: bars,
				outerBoundsMode: 'none',
			})
			xAxis.push(weekAxis(index, weeks, surface, last, width - names), borderAxis(index, weeks))
			yAxis.push({
				...heightAxis(index, { max }),
				show: true,
				axisLabel: { show: false },
				splitLine: { show: false },
				axisLine: { show: false },
				axisTick: { show: false },
				name: labelOf(labels[index]!),
				nameLocation: 'middle',
				nameRotate: 0,
				nameGap: 8,
				nameTextStyle: {
					align: 'right',
					color: ink.text,
					fontFamily: surface.fontFamily,
					fontSize: surface.fontSize,
					lineHeight: Math.round(surface.fontSize * 1.3),
					rich: { under: { color: ink.soft, fontFamily: surface.fontFamily, fontSize: surface.fontSize - 1 } },
				},
			})
			const slot = (width - names) / weeks.length
			series.push(
				...needBars(measure, { grid: index, axis: index * 2, ...look, slot, surface, reader, abreast: 1 }),
				...needLine(measure, index, index * 2 + 1, ink.need),
			)
		})
		return { height: head + perColumn * row + foot, option: { ...base(surface), grid, xAxis, yAxis, series } }
	}
}

function labelOf({ name, under }: { readonly name: readonly string[]; readonly under: readonly string[] }): string {
	return [...name.map(plain), ...under.map(line => `{under|${plain(line)}}`)].join('\n')
}

/** The library reads braces as marks of its own; a name must not be taken for one. */
function plain(text: string): string {
	return text.replaceAll(/[{}|]/g, ' ')
}

function linesOf(text: string): string[] {
	const lines: string[] = []
	for (const word of text.split(' ')) {
		const last = lines.at(-1)
		if (last !== undefined && `${last} ${word}`.length <= lineLength) lines[lines.length - 1] = `${last} ${word}`
		else lines.push(word)
	}
	return lines
}
