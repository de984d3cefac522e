import type { Reader } from '../reader/reader.ts'
import type { NeedMeasure, WeekColumn } from '../volume/measures.ts'
import { type ChartOption, type Drawing, ink } from './drawing.ts'
import { base, borderAxis, ceiling, heightAxis, needBars, needLine, weekAxis } from './parts.ts'

/** A row of bars for each muscle, all on one scale; on a wide surface in two columns. */
export function muscleSetsDrawing(muscles: readonly NeedMeasure[], weeks: readonly WeekColumn[], reader: Reader): Drawing {
	return surface => {
		const columns = surface.width >= 600 && muscles.length > 1 ? 2 : 1
		const rows = Math.ceil(muscles.length / columns)
		const longest = Math.max(...muscles.map(({ name }) => name.length), 'needs 10'.length)
		const names = Math.round(longest * surface.fontSize * 0.6) + 14
		const gap = 24
		const width = (surface.width - gap * (columns - 1)) / columns
		const bars = Math.round(surface.fontSize * 3.5)
		const row = bars + Math.round(surface.fontSize * 0.9)
		// The first row's numbers reach above its own bars.
		const head = Math.round(surface.fontSize * 0.5)
		const foot = Math.round(surface.fontSize * 1.9)
		// Headroom keeps the numbers of the highest bars inside their own row.
		const max = ceiling(muscles) * 1.4

		const option = base(surface)
		const grid: ChartOption['grid'] & object[] = []
		const xAxis: ChartOption['xAxis'] & object[] = []
		const yAxis: ChartOption['yAxis'] & object[] = []
		const series: ChartOption['series'] & object[] = []
		muscles.forEach((muscle, index) => {
			const column = Math.floor(index / rows)
			const place = index % rows
			const last = place === rows - 1 || index === muscles.length - 1
			grid.push({
				id: muscle.name,
				left: column * (width + gap) + names,
				width: width - names,
				top: head + place * row,
				height: bars,
				outerBoundsMode: 'none',
			})
			xAxis.push(weekAxis(index, weeks, surface, last), borderAxis(index, weeks))
			yAxis.push({
				...heightAxis(index, { max }),
				show: true,
				axisLabel: { show: false },
				splitLine: { show: false },
				axisLine: { show: false },
				axisTick: { show: false },
				name: nameOf(muscle, reader),
				nameLocation: 'middle',
				nameRotate: 0,
				nameGap: 8,
				nameTextStyle: {
					align: 'right',
					color: ink.text,
					fontFamily: surface.fontFamily,
					fontSize: surface.fontSize,
					lineHeight: Math.round(surface.fontSize * 1.3),
					rich: { need: { color: ink.soft, fontFamily: surface.fontFamily, fontSize: surface.fontSize - 1 } },
				},
			})
			const slot = (width - names) / weeks.length
			series.push(
				...needBars(muscle, { grid: index, axis: index * 2, color: ink.volume, slot, surface, reader, abreast: 1 }),
				...needLine(muscle, index, index * 2 + 1, ink.need),
			)
		})
		return { height: head + rows * row + foot, option: { ...option, grid, xAxis, yAxis, series } }
	}
}

/** The muscle, and under it what a week needs of it. */
function nameOf({ name, need }: NeedMeasure, reader: Reader): string {
	if (need === null) return name
	const needed = need.needed.amounts.flatMap(amount => (amount === null ? [] : [Number(amount.low)]))
	const low = reader.number(Math.min(...needed))
	const high = reader.number(Math.max(...needed))
	return `${name}\n{need|needs ${reader.range(low, high)}}`
}
