import type { LineSeriesOption } from 'echarts/charts'
import type { GateOnTimeline } from '../../../language/reports/gate-timeline.ts'
import { type ChartOption, type Drawing, ink } from './drawing.ts'
import { base } from './parts.ts'

/** A gate on a line of weeks: 0 is the time before the plan, 1 its first week. */
export interface GateTrack {
	readonly text: string
	readonly state: GateOnTimeline['state']
	/** When it was passed, or will be by the plan; `null` where nothing says when. */
	readonly shown: number | null
	readonly needed: number
}

const stateColours = { passed: ink.stability, planned: ink.warning, open: ink.error } as const

/** A line for each gate, from where it is passed to where it is needed. `before` names the time before the plan. */
export function gateTimelineDrawing(
	tracks: readonly GateTrack[],
	weeks: readonly { readonly label: string; readonly deload: boolean }[],
	before: string,
): Drawing {
	return surface => {
		const row = Math.round(surface.fontSize * 3.2)
		const words = Math.round(surface.fontSize * 1.6)
		const foot = Math.round(surface.fontSize * 2.2)
		const labels = [before, ...weeks.map(({ label }) => label)]
		const widest = Math.max(surface.fontSize * 2.2, before.length * surface.fontSize * 0.65)
		const every = Math.max(1, Math.ceil((labels.length * widest) / surface.width))
		const grid: ChartOption['grid'] & object[] = []
		const xAxis: ChartOption['xAxis'] & object[] = []
		const yAxis: ChartOption['yAxis'] & object[] = []
		const series: ChartOption['series'] & object[] = []
		tracks.forEach((track, index) => {
			grid.push({
				id: `gate ${index}`,
				left: 0,
				right: 0,
				top: index * row + words,
				height: row - words,
				outerBoundsMode: 'none',
			})
			xAxis.push({
				id: `weeks ${index}`,
				gridIndex: index,
				type: 'category',
				data: labels,
				axisTick: { show: false },
				axisLine: { show: index === tracks.length - 1, lineStyle: { color: ink.line, width: 1 } },
				axisLabel: {
					show: index === tracks.length - 1,
					interval: every - 1,
					// The word before the first week is wider than a week of a long season.
					alignMinLabel: every > 1 ? 'left' : 'center',
					color: ink.soft,
					fontFamily: surface.fontFamily,
					fontSize: surface.fontSize,
				},
				splitArea: {
					show: true,
					interval: 0,
					areaStyle: { color: ['transparent', ...weeks.map(({ deload }) => (deload ? ink.band : 'transparent'))] },
				},
				silent: true,
			})
			yAxis.push({
				id: `gate ${index}`,
				gridIndex: index,
				type: 'value',
				min: 0,
				max: 2,
				show: true,
				axisLabel: { show: false },
				splitLine: { show: false },
				axisLine: { show: false },
				axisTick: { show: false },
				name: track.text,
				nameLocation: 'end',
				nameGap: 4,
				nameTextStyle: { align: 'left', color: ink.text, fontFamily: surface.fontFamily, fontSize: surface.fontSize },
			})
			series.push(...seriesOf(track, index))
		})
		return { height: tracks.length * row + foot, option: { ...base(surface), grid, xAxis, yAxis, series } }
	}
}

function seriesOf({ state, shown, needed }: GateTrack, index: number): LineSeriesOption[] {
	const color = stateColours[state]
	const common: LineSeriesOption = {
		type: 'line',
		xAxisIndex: index,
		yAxisIndex: index,
		emphasis: { disabled: true },
		silent: true,
	}
	const shownMark = {
		value: [shown ?? 0, 1],
		symbol: state === 'passed' ? 'circle' : 'emptyCircle',
		symbolSize: 9,
	}
	const neededMark = { value: [needed, 1], symbol: 'rect', symbolSize: [4, 14] }
	return [
		{
			...common,
			id: `gate ${index}`,
			lineStyle: { color, width: 2, type: state === 'passed' ? 'solid' : [5, 4] },
			itemStyle: { color, borderColor: color, borderWidth: 2 },
			data: shown === null ? [neededMark] : [shownMark, neededMark],
		},
	]
}
