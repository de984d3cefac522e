import type { LineSeriesOption } from 'echarts/charts'
import type { Reader } from '../reader/reader.ts'
import type { LiftMeasures, Measure, WeekColumn } from '../volume/measures.ts'
import { type Drawing, ink } from './drawing.ts'
import { base, heightAxis, twoPartBars, weekAxis } from './parts.ts'

/** A lift's intensity above its tonnage: two lanes over the same weeks, so that no number is read off the wrong axis. */
export function mainLiftDrawing(lift: LiftMeasures, weeks: readonly WeekColumn[], reader: Reader): Drawing {
	return surface => {
		const slot = surface.width / weeks.length
		const lane = Math.round(surface.fontSize * 6)
		const plot = Math.round(surface.fontSize * 7.5)
		const percents = [lift.average, lift.top].flatMap(measure =>
			measure.amounts.flatMap(a => (a === null ? [] : [Number(a.high)])),
		)
		const low = Math.min(100, ...percents)
		const high = Math.max(0, ...percents)
		const solid = lift.work.amounts.map(amount => (amount === null ? 0 : Number(amount.low)))
		const tallest = Math.max(1, ...lift.work.amounts.map(amount => Number(amount?.high ?? 0)))
		const point = (measure: Measure, look: Partial<LineSeriesOption>): LineSeriesOption => ({
			id: measure.name,
			type: 'line',
			xAxisIndex: 0,
			yAxisIndex: 0,
			data: measure.amounts.map(amount => ({
				value: amount === null ? null : Number(amount.high),
				label: { formatter: amount === null ? '' : reader.number(amount.high) },
			})),
			connectNulls: false,
			emphasis: { disabled: true },
			silent: true,
			...look,
		})
		return {
			height: lane + plot + Math.round(surface.fontSize * 2.2),
			option: {
				...base(surface),
				grid: [
					{ id: 'intensity', left: 0, right: 0, top: 0, height: lane, outerBoundsMode: 'none' },
					{ id: 'work', left: 0, right: 0, top: lane, height: plot, outerBoundsMode: 'none' },
				],
				xAxis: [{ ...weekAxis(0, weeks, surface, false), axisLine: { show: false } }, weekAxis(1, weeks, surface, true)],
				// Room above for the heaviest set's mark, below for the average's number.
				yAxis: [heightAxis(0, { min: low - (high - low + 8) * 0.5, max: high + 6 }), heightAxis(1, { max: tallest * 1.25 })],
				series: [
					point(lift.top, {
						symbol: 'triangle',
						symbolSize: 7,
						itemStyle: { color: ink.soft },
						lineStyle: { width: 0 },
						label: { show: false },
					}),
					point(lift.average, {
						symbol: 'circle',
						symbolSize: 7,
						itemStyle: { color: ink.intensity },
						lineStyle: { color: ink.intensity, width: 2 },
						label: {
							show: slot > surface.fontSize * 2,
							position: 'bottom',
							color: ink.text,
							fontFamily: surface.fontFamily,
							fontSize: surface.fontSize - 1,
						},
					}),
					...twoPartBars('work', lift.work, solid, { grid: 1, axis: 1, color: ink.volume, slot, surface, reader, abreast: 1 }),
				],
			},
		}
	}
}
