import type { ChartOption, Drawing } from '../views/charts/drawing.ts'
import { type EChartsType, init } from '../views/charts/library.ts'

/** So long after the words have been painted, charts that are out of view follow: whatever the coach does meanwhile comes first. */
const pauseMilliseconds = 30

/** One chart of the page in its element. What is looked at is drawn at once, with the words around it; what is out of view a moment later. */
export class LiveChart {
	private readonly host: HTMLElement
	private readonly sizes = new ResizeObserver(() => this.draw())
	private readonly views = new IntersectionObserver(entries => {
		this.isInView = entries.at(-1)?.isIntersecting ?? true
	})
	/** Taken to be until it is known: a page is drawn whole at first. */
	private isInView = true
	private drawing: Drawing | undefined
	private waiting: number | undefined
	private chart: EChartsType | undefined
	private told = ''
	private parts = ''

	constructor(host: HTMLElement) {
		this.host = host
		this.sizes.observe(host)
		this.views.observe(host)
	}

	show(drawing: Drawing): void {
		this.drawing = drawing
		if (this.isInView) this.draw()
		else this.waiting ??= window.setTimeout(() => this.draw(), pauseMilliseconds)
	}

	dispose(): void {
		window.clearTimeout(this.waiting)
		this.sizes.disconnect()
		this.views.disconnect()
		this.chart?.dispose()
	}

	private draw(): void {
		window.clearTimeout(this.waiting)
		this.waiting = undefined
		const width = this.host.clientWidth
		if (this.drawing === undefined || width === 0) return
		const { fontFamily, fontSize } = getComputedStyle(this.host)
		const { height, option } = this.drawing({ width, fontFamily, fontSize: Number.parseFloat(fontSize) })
		const telling = JSON.stringify([width, height, option])
		if (telling === this.told) return
		this.told = telling
		this.host.style.height = `${height}px`
		if (this.chart === undefined) this.chart = init(this.host, null, { renderer: 'svg', width, height })
		// A new size makes the library work everything out: only where there is one.
		else if (this.chart.getWidth() !== width || this.chart.getHeight() !== height)
			this.chart.resize({ width, height, silent: true })
		// What has the same id is changed in its place, so that nothing flickers. Where there are other parts than before, all is made anew:
		// the library keeps gaps where parts were, and fails at them.
		const parts = partsOf(option)
		this.chart.setOption(option, { notMerge: parts !== this.parts, silent: true })
		this.parts = parts
	}
}

/** The parts of a drawing by their names, in their order. */
function partsOf({ grid, xAxis, yAxis, series }: ChartOption): string {
	return JSON.stringify([grid, xAxis, yAxis, series].map(parts => [parts ?? []].flat().map(({ id }) => id)))
}
