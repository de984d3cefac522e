import { describe, expect, it } from 'vitest'
import { litPlaces } from '../../../client/preview/lit-places.ts'

const place = (uri: string, line: number, from: number, to: number) => ({
	uri,
	range: { start: { line, character: from }, end: { line, character: to } },
})
const places = [place('file:///a.stave', 4, 10, 20), place('file:///a.stave', 4, 22, 30), place('file:///b.stave', 4, 10, 20)]
const lit = (uri: string, line: number, character: number) => litPlaces(places, { uri, line, character })

describe('the cursor lights up', () => {
	it('the place it is in, both ends included', () => {
		expect(lit('file:///a.stave', 4, 10)).toEqual([0])
		expect(lit('file:///a.stave', 4, 20)).toEqual([0])
		expect(lit('file:///a.stave', 4, 25)).toEqual([1])
	})

	it('nothing between places, on other lines, or without a cursor', () => {
		expect(lit('file:///a.stave', 4, 21)).toEqual([])
		expect(lit('file:///a.stave', 3, 15)).toEqual([])
		expect(litPlaces(places, null)).toEqual([])
	})

	it('the place in its own file alone', () => expect(lit('file:///b.stave', 4, 15)).toEqual([2]))

	it('a place of several lines', () => {
		const long = { uri: 'u', range: { start: { line: 1, character: 8 }, end: { line: 3, character: 2 } } }
		expect(litPlaces([long], { uri: 'u', line: 2, character: 0 })).toEqual([0])
		expect(litPlaces([long], { uri: 'u', line: 3, character: 3 })).toEqual([])
	})
})
