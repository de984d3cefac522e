import { useCallback, useEffect, useLayoutEffect, useRef } from 'preact/hooks'
import type { ChartOption } from '../views/charts/drawing.ts'
import { type EChartsType, init } from '../views/charts/library.ts'
import type { SurfaceProps } from '../views/charts/surface.ts'

/** A chart that is drawn where it stands, and again only when something of it has changed. */
export function LiveSurface({ drawing }: SurfaceProps) {
	const host = useRef<HTMLDivElement>(null)
	const chart = useRef<EChartsType | undefined>(undefined)
	const told = useRef('')
	const drawn = useRef('')

	const draw = useCallback(() => {
		const element = host.current
		const width = element?.clientWidth ?? 0
		if (!element || width === 0) return
		const { fontFamily, fontSize } = getComputedStyle(element)
		const { height, option } = drawing({ width, fontFamily, fontSize: Number.parseFloat(fontSize) })
		const telling = JSON.stringify([width, height, option])
		if (telling === told.current) return
		told.current = telling
		element.style.height = `${height}px`
		if (chart.current === undefined) chart.current = init(element, null, { renderer: 'svg', width, height })
		// A new size makes the library work everything out: only where there is one.
		else if (chart.current.getWidth() !== width || chart.current.getHeight() !== height)
			chart.current.resize({ width, height, silent: true })
		// What has the same id is changed in its place, so that nothing flickers. Where there are other parts than before, all is made anew:
		// the library keeps gaps where parts were, and fails at them.
		const parts = partsOf(option)
		chart.current.setOption(option, { notMerge: parts !== drawn.current, silent: true })
		drawn.current = parts
	}, [drawing])

	useLayoutEffect(draw, [draw])
	useEffect(() => {
		const sizes = new ResizeObserver(draw)
		sizes.observe(host.current!)
		return () => sizes.disconnect()
	}, [draw])
	useEffect(() => () => chart.current?.dispose(), [])

	return <div class="live" ref={host} />
}

/** The parts of a drawing by their names, in their order. */
function partsOf({ grid, xAxis, yAxis, series }: ChartOption): string {
	return JSON.stringify([grid, xAxis, yAxis, series].map(parts => [parts ?? []].flat().map(({ id }) => id)))
}
