import { useLayoutEffect, useRef } from 'preact/hooks'
import type { SurfaceProps } from '../views/charts/surface.ts'
import { LiveChart } from './live-chart.ts'

/** A chart that is drawn where it stands, and again only when something of it has changed. */
export function LiveSurface({ drawing }: SurfaceProps) {
	const host = useRef<HTMLDivElement>(null)
	const chart = useRef<LiveChart | undefined>(undefined)
	useLayoutEffect(() => {
		chart.current = new LiveChart(host.current!)
		return () => chart.current?.dispose()
	}, [])
	useLayoutEffect(() => chart.current?.show(drawing), [drawing])
	return <div class="live" ref={host} />
}
