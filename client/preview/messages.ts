import type { NotificationType } from 'vscode-messenger-common'
import type { Place, Position, PreviewData, Subject } from '../../language/reports/preview.ts'

// What the panel's page and the extension tell each other: data alone. Both ends are typed by these definitions.

/** What a page keeps over a reload of the window. */
export interface PageState {
	/** What was picked; `null` where the page follows the cursor. */
	readonly held: Subject | null
	/** What stood at the top; `null` at the beginning of the page. */
	readonly scroll: ScrollPlace | null
}

/** A place of the page that means the same at another width: a section, and how far its top was from the window's, in CSS pixels. */
export interface ScrollPlace {
	readonly section: string
	readonly top: number
}

export interface Cursor extends Position {
	readonly uri: string
}

// From the page.

/** The page is there and wants its data. */
export const ready: NotificationType<{ readonly held: Subject | null }> = { method: 'barstave/ready' }
/** Show this, wherever the cursor goes; `null`: follow the cursor. */
export const hold: NotificationType<{ readonly held: Subject | null }> = { method: 'barstave/hold' }
/** Show this place in the text. */
export const reveal: NotificationType<Place> = { method: 'barstave/reveal' }

// To the page.

export const show: NotificationType<PreviewData> = { method: 'barstave/show' }
/** What is held now; `null`: the cursor is followed. */
export const holding: NotificationType<{ readonly held: Subject | null }> = { method: 'barstave/holding' }
/** Where the cursor is in the text; `null` where it is in none of ours. */
export const cursor: NotificationType<{ readonly at: Cursor | null }> = { method: 'barstave/cursor' }
/** The server does not answer. */
export const silence: NotificationType<{ readonly message: string }> = { method: 'barstave/silence' }
