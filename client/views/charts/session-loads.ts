import type { BarSeriesOption } from 'echarts/charts'
import type { Reader } from '../reader/reader.ts'
import type { Measure } from '../volume/measures.ts'
import { type Drawing, ink } from './drawing.ts'
import { base, heightAxis, numbersOnBars, topLabel } from './parts.ts'

/** The load of training week by week, as the log tells it. */
export function sessionLoadsDrawing(load: Measure, labels: readonly string[], reader: Reader): Drawing {
	return surface => {
		const plot = Math.round(surface.fontSize * 8)
		const slot = surface.width / Math.max(1, labels.length)
		const every = Math.max(1, Math.ceil((surface.fontSize * 4) / slot))
		const heights = load.amounts.map(amount => (amount === null ? null : Number(amount.low)))
		const numbers = numbersOnBars(load, { reader, slot, abreast: 1, surface })
		const bars: BarSeriesOption = {
			id: load.name,
			type: 'bar',
			barCategoryGap: '28%',
			barMaxWidth: 34,
			emphasis: { disabled: true },
			silent: true,
			itemStyle: { color: ink.volume },
			data: heights.map((height, week) => ({
				value: height,
				label: topLabel(numbers[week]!, surface, height !== null),
			})),
		}
		return {
			height: plot + Math.round(surface.fontSize * 2.2),
			option: {
				...base(surface),
				grid: [{ id: 'loads', left: 0, right: 0, top: 0, height: plot, outerBoundsMode: 'none' }],
				xAxis: [
					{
						id: 'weeks',
						type: 'category',
						data: [...labels],
						axisTick: { show: false },
						axisLine: { lineStyle: { color: ink.line, width: 1 } },
						axisLabel: { interval: every - 1, color: ink.soft, fontFamily: surface.fontFamily, fontSize: surface.fontSize },
						silent: true,
					},
				],
				yAxis: [heightAxis(0, { max: Math.max(1, ...heights.map(height => height ?? 0)) * 1.2 })],
				series: [bars],
			},
		}
	}
}
