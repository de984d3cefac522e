import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { withUnchanged } from '../../../client/views/unchanged.ts'

describe('what has not changed', () => {
	it('stays the very same object, and what has changed does not', () => {
		const before = { weeks: [{ sets: [1, 2] }, { sets: [3] }], title: 'a' }
		const next = withUnchanged(before, { weeks: [{ sets: [1, 2] }, { sets: [4] }], title: 'a' })
		expect(next).toEqual({ weeks: [{ sets: [1, 2] }, { sets: [4] }], title: 'a' })
		expect(next.weeks[0]).toBe(before.weeks[0])
		expect(next.weeks[1]).not.toBe(before.weeks[1])
	})

	it('is all of it where all says the same', () => {
		const before = { a: [{ b: null }] }
		expect(withUnchanged(before, { a: [{ b: null }] })).toBe(before)
	})

	it('never says anything else than the new value', () => {
		fc.assert(
			fc.property(fc.json(), fc.json(), (a, b) => {
				expect(withUnchanged(JSON.parse(a), JSON.parse(b))).toEqual(JSON.parse(b))
			}),
		)
	})
})
