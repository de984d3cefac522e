import type { BarSeriesOption, LineSeriesOption } from 'echarts/charts'
import type { GridComponentOption, TooltipComponentOption } from 'echarts/components'
import type { ComposeOption } from 'echarts/core'

/** What the chart library is told. It holds no functions, so that two of them can be compared. */
export type ChartOption = ComposeOption<BarSeriesOption | LineSeriesOption | GridComponentOption | TooltipComponentOption>

/** The place a chart is drawn in. */
export interface Surface {
	/** CSS pixels. */
	readonly width: number
	/** The surroundings' own font, so that a chart's words are measured as they are shown. */
	readonly fontFamily: string
	readonly fontSize: number
}

/** A chart for any width: the same in the panel, in pages and in the terminal's HTML. */
export type Drawing = (surface: Surface) => { readonly height: number; readonly option: ChartOption }

/** Colours are the page's own custom properties: a chart follows the theme without being drawn again. */
export const ink = {
	paper: 'var(--paper)',
	text: 'var(--ink)',
	soft: 'var(--soft)',
	line: 'var(--line)',
	band: 'var(--band)',
	need: 'var(--need)',
	volume: 'var(--volume)',
	stability: 'var(--stability)',
	drive: 'var(--drive)',
	intensity: 'var(--intensity)',
	warning: 'var(--warning)',
	error: 'var(--error)',
	/** From the lightest zone of intensity to the heaviest. */
	zones: ['var(--zone-1)', 'var(--zone-2)', 'var(--zone-3)', 'var(--zone-4)'],
} as const
