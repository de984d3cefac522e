import type { XAXisComponentOption, YAXisComponentOption } from 'echarts'
import type { BarSeriesOption, LineSeriesOption } from 'echarts/charts'
import type { Reader } from '../reader/reader.ts'
import { amountText } from '../volume/amounts.ts'
import type { Amount, Measure, NeedMeasure, WeekColumn } from '../volume/measures.ts'
import { type ChartOption, ink, type Surface } from './drawing.ts'

/** What every chart has in common: nothing moves, nothing lights up, words look like the words around them. */
export function base({ fontFamily, fontSize }: Surface): ChartOption {
	return { animation: false, textStyle: { fontFamily, fontSize, color: ink.soft } }
}

/** Weeks from left to right, lighter ones on a band. `width` is what they have together. */
export function weekAxis(
	grid: number,
	weeks: readonly WeekColumn[],
	surface: Surface,
	labelled: boolean,
	width = surface.width,
): XAXisComponentOption {
	return {
		id: `weeks ${grid}`,
		gridIndex: grid,
		type: 'category',
		data: weeks.map(({ week }) => String(week)),
		axisTick: { show: false },
		axisLine: { lineStyle: { color: ink.line, width: 1 } },
		axisLabel: {
			show: labelled,
			// In a long season there is room for some weeks' numbers only.
			interval: Math.ceil((surface.fontSize * 1.7 * weeks.length) / width) - 1,
			color: ink.soft,
			fontFamily: surface.fontFamily,
			fontSize: surface.fontSize,
		},
		splitArea: { show: true, interval: 0, areaStyle: { color: weeks.map(({ deload }) => (deload ? ink.band : 'transparent')) } },
		silent: true,
	}
}

/** The same stretch counted from week border to week border, for lines that reach across whole weeks. */
export function borderAxis(grid: number, weeks: readonly WeekColumn[]): XAXisComponentOption {
	return { id: `borders ${grid}`, gridIndex: grid, type: 'value', min: 0, max: weeks.length, show: false }
}

/** Heights. Numbers stand on the bars, so the axis itself is not drawn. */
export function heightAxis(grid: number, range: { readonly min?: number; readonly max: number }): YAXisComponentOption {
	return { id: `heights ${grid}`, gridIndex: grid, type: 'value', min: range.min ?? 0, max: range.max, show: false }
}

export interface BarLook {
	readonly grid: number
	readonly color: string
	/** Of the upper part; else a pale one of the same colour. */
	readonly rest?: { readonly color: string; readonly opacity: number }
	/** The number stands in the solid part, where a line would run through it above. */
	readonly inside?: boolean
	readonly axis: number
	/** Room for a week's numbers, in CSS pixels. */
	readonly slot: number
	readonly surface: Surface
	readonly reader: Reader
	/** Bars side by side in one week. */
	readonly abreast: number
}

/**
 * Bars whose lower part is solid and whose upper part is pale: sets that answer below other sets, or what is certain of a range below
 * what is possible. The number on top is the whole.
 */
export function twoPartBars(name: string, measure: Measure, solid: readonly number[], look: BarLook): BarSeriesOption[] {
	const whole = measure.amounts.map(amount => (amount === null ? null : Number(amount.high)))
	const text = numbersOnBars(measure, look)
	const common: BarSeriesOption = {
		type: 'bar',
		xAxisIndex: look.axis,
		yAxisIndex: look.grid,
		stack: name,
		barCategoryGap: '28%',
		barGap: '12%',
		barMaxWidth: 34,
		emphasis: { disabled: true },
		silent: true,
	}
	return [
		{
			...common,
			id: `${name} solid`,
			itemStyle: { color: look.color },
			data: whole.map((all, week) => {
				if (all === null) return null
				const value = solid[week] ?? 0
				return look.inside ? { value, label: insideLabel(text[week]!, look, value > 0) } : value
			}),
		},
		{
			...common,
			id: `${name} pale`,
			itemStyle: look.rest ?? { color: look.color, opacity: 0.38 },
			data: whole.map((all, week) => ({
				value: all === null ? null : all - (solid[week] ?? 0),
				label: topLabel(text[week]!, look.surface, all !== null && all > 0 && !look.inside),
			})),
		},
	]
}

/** A number on top of a bar. */
export function topLabel(words: string, { fontFamily, fontSize }: Surface, isThere = true) {
	return {
		show: isThere && words !== '',
		position: 'top' as const,
		distance: 3,
		formatter: words,
		color: ink.text,
		opacity: 1,
		// A halo keeps a number readable where a line of needs runs through it.
		textBorderColor: ink.paper,
		textBorderWidth: 2,
		fontFamily,
		fontSize: fontSize - 1,
	}
}

function insideLabel(words: string, { surface }: BarLook, isThere: boolean) {
	return { ...topLabel(words, surface, isThere), position: 'inside' as const, distance: 0, color: ink.paper, textBorderWidth: 0 }
}

/** Bars of sets that answer below all sets; where nothing is needed, of what is certain below what is possible. */
export function needBars(measure: NeedMeasure, look: BarLook): BarSeriesOption[] {
	const solid = (measure.need?.answering ?? measure.all).amounts.map(amount => Number(amount?.low ?? 0))
	return twoPartBars(measure.name, measure.all, solid, look)
}

/** The dashed line of what is needed, across each week that needs it. */
export function needLine(measure: NeedMeasure, grid: number, borders: number, color: string): LineSeriesOption[] {
	if (measure.need === null) return []
	const data: [number, number | null][] = []
	for (const [week, amount] of measure.need.needed.amounts.entries()) {
		const height = amount === null ? null : Number(amount.low)
		data.push([week, height], [week + 1, height])
	}
	const common: LineSeriesOption = {
		type: 'line',
		xAxisIndex: borders,
		yAxisIndex: grid,
		data,
		symbol: 'none',
		connectNulls: false,
		emphasis: { disabled: true },
		silent: true,
		z: 5,
	}
	// The edge keeps the line apart from bars of its own colour.
	return [
		{ ...common, id: `${measure.name} needed, edge`, lineStyle: { color: ink.paper, width: 4 } },
		{ ...common, id: `${measure.name} needed`, lineStyle: { color, width: 2, type: [5, 4] } },
	]
}

/** The highest value of measures and needs, with room for the numbers above it; never 0. */
export function ceiling(measures: readonly NeedMeasure[]): number {
	const heights = measures.flatMap(({ all, need }) => [...all.amounts, ...(need?.needed.amounts ?? [])].map(numberOf))
	return Math.max(1, ...heights)
}

function numberOf(amount: Amount): number {
	return amount === null ? 0 : Number(amount.high)
}

/**
 * The numbers that a row of bars bears, by week; empty where it bears none. All of them where they fit beside each other, of ranges the
 * high ends where those do; else the greatest alone, by which the others are read. The table has them all.
 */
export function numbersOnBars(
	{ amounts, unit }: Pick<Measure, 'amounts' | 'unit'>,
	{ reader, slot, abreast, surface, inside }: Pick<BarLook, 'reader' | 'slot' | 'abreast' | 'surface' | 'inside'>,
): string[] {
	// A number inside of a bar has its width alone.
	const room = inside ? slot * 0.72 : slot / abreast
	const fits = (text: string) => text.length * (surface.fontSize - 1) * 0.58 <= room
	const high = amounts.map(amount => (amount === null ? null : { low: amount.high, high: amount.high }))
	const [ranges, highEnds] = [amounts, high].map(ends => ends.map(amount => shortText(amount, unit, reader)))
	if (ranges!.every(fits)) return ranges!
	if (highEnds!.every(fits)) return highEnds!
	const heights = amounts.map(numberOf)
	const greatest = inside ? -1 : heights.indexOf(Math.max(...heights))
	return highEnds!.map((text, week) => (week === greatest ? text : ''))
}

/** On a bar the unit is left to the heading; seconds are written as a clock writes them. */
function shortText(amount: Amount, unit: Measure['unit'], reader: Reader): string {
	if (amount === null) return ''
	if (unit !== 's') return amountText(amount, null, reader)
	return reader.range(reader.clock(Number(amount.low)), reader.clock(Number(amount.high)))
}
