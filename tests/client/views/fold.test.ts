import { describe, expect, it } from 'vitest'
import { foldSets } from '../../../client/views/sheet/fold.ts'
import { set } from './support/invented.ts'

const folded = (sets: Parameters<typeof foldSets>[0]) =>
	foldSets(sets).map(({ first, firm, optional }) => [first, firm, optional])

describe('folding sets', () => {
	it('makes one line of sets that are alike', () => expect(folded([set(), set(), set()])).toEqual([[0, 3, 0]]))

	it('keeps sets apart that differ in anything that is done', () => {
		const same = { load: '100', exact: '100' }
		expect(folded([set(same), set({ ...same, load: '102.5' }), set({ ...same, restSeconds: 90 })])).toEqual([
			[0, 1, 0],
			[1, 1, 0],
			[2, 1, 0],
		])
	})

	it('keeps the order: what stands between two like sets parts them', () =>
		expect(folded([set(), set({ load: '90' }), set()])).toEqual([
			[0, 1, 0],
			[1, 1, 0],
			[2, 1, 0],
		]))

	it('adds optional sets to the like ones before them', () =>
		expect(folded([set(), set(), set(), set({ optional: true })])).toEqual([[0, 3, 1]]))

	it('does not put firm sets behind optional ones', () =>
		expect(folded([set(), set({ optional: true }), set()])).toEqual([
			[0, 1, 1],
			[2, 1, 0],
		]))

	it('makes nothing of nothing', () => expect(foldSets([])).toEqual([]))
})
