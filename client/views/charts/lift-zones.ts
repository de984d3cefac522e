import type { BarSeriesOption } from 'echarts/charts'
import type { Reader } from '../reader/reader.ts'
import type { Measure, WeekColumn } from '../volume/measures.ts'
import { type Drawing, ink } from './drawing.ts'
import { base, heightAxis, numbersOnBars, topLabel, weekAxis } from './parts.ts'

/** Lifts a week, stacked by intensity zone: the heavier, the darker (on dark paper the lighter), the heaviest on top. */
export function liftZonesDrawing(zones: readonly Measure[], weeks: readonly WeekColumn[], reader: Reader): Drawing {
	return surface => {
		const plot = Math.round(surface.fontSize * 13.5)
		const slot = surface.width / weeks.length
		const sums = weeks.map((_, week) => {
			const ends = zones.map(({ amounts }) => amounts[week] ?? null)
			const low = ends.reduce((sum, amount) => sum + Number(amount?.low ?? 0), 0)
			const high = ends.reduce((sum, amount) => sum + Number(amount?.high ?? 0), 0)
			return { low, high }
		})
		const amounts = sums.map(({ low, high }) => ({ low: String(low), high: String(high) }))
		const numbers = numbersOnBars({ amounts, unit: null }, { reader, slot, abreast: 1, surface })
		const common: BarSeriesOption = {
			type: 'bar',
			xAxisIndex: 0,
			yAxisIndex: 0,
			stack: 'lifts',
			barCategoryGap: '28%',
			barMaxWidth: 34,
			emphasis: { disabled: true },
			silent: true,
		}
		return {
			height: plot + Math.round(surface.fontSize * 2.2),
			option: {
				...base(surface),
				grid: [{ id: 'zones', left: 0, right: 0, top: 0, height: plot, outerBoundsMode: 'none' }],
				xAxis: [weekAxis(0, weeks, surface, true)],
				yAxis: [heightAxis(0, { max: Math.max(1, ...sums.map(({ high }) => high)) * 1.15 })],
				series: [
					...zones.map(
						({ name, amounts }, zone): BarSeriesOption => ({
							...common,
							id: name,
							// The edge keeps neighbours apart where their colours alone would not.
							itemStyle: { color: ink.zones[zone] ?? ink.volume, borderColor: ink.paper, borderWidth: 1 },
							// What is not there has no edge either.
							data: amounts.map(amount => (amount === null || Number(amount.low) === 0 ? null : Number(amount.low))),
						}),
					),
					{
						...common,
						id: 'where the high end is done',
						itemStyle: { color: ink.volume, opacity: 0.38 },
						data: sums.map(({ low, high }, week) => ({
							value: high === 0 ? null : high - low,
							label: topLabel(numbers[week]!, surface, high > 0),
						})),
					},
				],
			},
		}
	}
}
