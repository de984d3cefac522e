import { sha256 } from '@noble/hashes/sha2.js'
import { render } from 'preact-render-to-string'
import type { Picture } from '../../language/reports/preview.ts'
import { StillSurface } from './charts/still-surface.tsx'
import { SurfaceContext } from './charts/surface.ts'
import { PictureView } from './picture-view.tsx'
import { ReaderContext } from './reader/context.ts'
import { readerOf } from './reader/reader.ts'
import calendar from './style/calendar.css' with { type: 'text' }
import colours from './style/colours.css' with { type: 'text' }
import page from './style/page.css' with { type: 'text' }
import parts from './style/parts.css' with { type: 'text' }
import print from './style/print.css' with { type: 'text' }
import sheet from './style/sheet.css' with { type: 'text' }
import volume from './style/volume.css' with { type: 'text' }

/** What is drawn, and for whom. */
export interface PageContent extends Picture {
	/** BCP 47; `null` writes ISO dates and decimal points. */
	readonly locale: string | null
}

const style = [colours, page, sheet, volume, parts, calendar, print].join('\n')

/**
 * A picture as one HTML file that needs nothing else: no script, no address, styles inside. Its content policy allows its own style sheet
 * by hash and nothing more, so that a title that looks like markup stays a title even if it were not escaped.
 */
export function renderPage({ locale, ...picture }: PageContent): string {
	const reader = readerOf(locale)
	const hash = btoa(String.fromCharCode(...sha256(new TextEncoder().encode(style))))
	const title = picture.lifterTitle === null ? picture.title : `${picture.title} – ${picture.lifterTitle}`
	const document = (
		<html lang="en">
			<head>
				<meta charset="utf-8" />
				<meta
					http-equiv="Content-Security-Policy"
					content={`default-src 'none'; style-src 'sha256-${hash}'; base-uri 'none'; form-action 'none'`}
				/>
				<meta name="viewport" content="width=device-width, initial-scale=1" />
				<title>{title}</title>
				<style dangerouslySetInnerHTML={{ __html: style }} />
			</head>
			<body>
				<ReaderContext.Provider value={reader}>
					<SurfaceContext.Provider value={StillSurface}>
						<PictureView picture={picture} staleBlocks={[]} go={null} />
					</SurfaceContext.Provider>
				</ReaderContext.Provider>
			</body>
		</html>
	)
	return `<!doctype html>\n${render(document)}\n`
}
