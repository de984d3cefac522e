import type { Titles } from '../../../language/reports/preview.ts'
import { own } from './own.ts'

/** A name as a person writes it: `upper-back` → `Upper back`. */
export function spokenName(name: string): string {
	const words = name.replaceAll('-', ' ')
	return words.charAt(0).toUpperCase() + words.slice(1)
}

export function blockTitle(titles: Titles, block: string): string {
	return own(titles.blocks, block) ?? spokenName(block)
}

export function gymTitle(titles: Titles, gym: string): string {
	return own(titles.gyms, gym) ?? spokenName(gym)
}
