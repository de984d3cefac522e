import { createContext } from 'preact'

/** The way from a picture back to the text, where there is an editor to go to. */
export interface TextLinks {
	/** @param place index into the picture's `written.places` */
	go(place: number): void
	/** The places that the cursor is in. */
	readonly lit: readonly number[]
}

/** `null` on a page that leads to no text. */
export const TextLinksContext = createContext<TextLinks | null>(null)
