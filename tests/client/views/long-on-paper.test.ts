import { expect, test } from 'vitest'
import { isLongOnPaper } from '../../../client/views/sheet/long-on-paper.ts'
import { item, session } from './support/invented.ts'

test('a week is long by its lines, and by what is said of its sessions and movements', () => {
	// Three sessions of five lines: 14 + 3 × (29 + 5 × 8.2) = 224 mm, and 232 are there.
	const items = Array.from({ length: 5 }, () => item())
	const week = (change = {}) => [1, 2, 3].map(() => ({ session: session({ items, ...change }) }))
	expect(isLongOnPaper(week())).toBe(false)
	// A note of two lines is 7.6 mm, three times: 246.8 mm.
	expect(isLongOnPaper(week({ notes: ['n'.repeat(70)] }))).toBe(true)
	// A movement with a note of four lines: 5.5 + 4 × 3.8 instead of 8.2, three times: 261.5 mm.
	expect(isLongOnPaper(week({ items: [...items.slice(1), item({ notes: ['n'.repeat(100)] })] }))).toBe(true)
})
