import { createContext, type FunctionComponent } from 'preact'
import type { Drawing } from './drawing.ts'

export interface SurfaceProps {
	readonly drawing: Drawing
	/** Tells the charts of a page apart. */
	readonly name: string
	/** How wide the chart lies on a page: its whole width, or half of it. */
	readonly span: 'page' | 'half'
}

/** What draws the charts: live in the panel, still in pages. The views do not know which. */
export const SurfaceContext = createContext<FunctionComponent<SurfaceProps>>(() => null)
