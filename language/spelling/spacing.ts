import type { Word } from './spell.ts'

/** Spaces between two words of one line. */
export function spacesBetween(before: Word, after: Word): number {
	const tight =
		after.type === ',' || after.type === ':' || after.type === '%' || after.type === 'RANGE' || before.type === 'RANGE'
	return tight ? 0 : 1
}
