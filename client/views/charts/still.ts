import type { Drawing } from './drawing.ts'
import { init } from './library.ts'

/** A chart as SVG text, for pages without scripts. `name` keeps the ids of several charts in one page apart. */
export function stillChart(drawing: Drawing, width: number, name: string): string {
	const { height, option } = drawing({ width, fontFamily: 'sans-serif', fontSize: 12 })
	const chart = init(null, null, { renderer: 'svg', ssr: true, width, height })
	try {
		chart.setOption(option)
		return plainSvg(chart.renderToSVGString({ useViewBox: true }), name)
	} finally {
		// Else the library's clock keeps the process alive.
		chart.dispose()
	}
}

/**
 * Takes out what a page with a strict content policy may not hold or does not need: styles (the font family comes from the page's own style sheet),
 * hover classes and the library's own marks. Text is escaped by the library, quotes too, so that no attribute can be found inside it.
 */
function plainSvg(svg: string, name: string): string {
	return svg
		.replace(/ style="[^"]*\bfont-size:([\d.]+)px[^"]*"/g, ' font-size="$1"')
		.replace(/<style\b[\s\S]*?<\/style>/g, '')
		.replace(/ (style|class|ecmeta_\w+|xmlns(:\w+)?|version|baseProfile)="[^"]*"/g, '')
		.replace(/\bzr\d+-/g, `${name}-`)
		.replace(/\n+/g, '')
}
