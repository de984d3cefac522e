import { stillChart } from './still.ts'
import type { SurfaceProps } from './surface.ts'

/** Widths for a wide and a narrow page, in CSS pixels; the style sheet shows one of the two. */
const widths = { page: { wide: 880, narrow: 330 }, half: { wide: 420, narrow: 330 } } as const

/** A chart in a page without scripts. */
export function StillSurface({ drawing, name, span }: SurfaceProps) {
	return (
		<>
			{(['wide', 'narrow'] as const).map(room => (
				<div
					key={room}
					class={`drawn ${room}`}
					dangerouslySetInnerHTML={{ __html: stillChart(drawing, widths[span][room], `${name}-${room}`) }}
				/>
			))}
		</>
	)
}
