import { describe, expect, test } from 'vitest'
import { type Implement, implementFor } from '../../../language/compute/implement.ts'
import { carrier, gym, load, movement } from './samples.ts'

const northHall = gym({
	bars: { barbell: '20 kg', 'safety-bar': '25 kg', 'women-bar': '15 kg' },
	plates: ['25 kg x 4', '20 kg x 2', '10 kg x 4', '5 kg x 4', '2.5 kg x 4', '1.25 kg x 4'],
	collars: '2.5 kg',
	dumbbells: ['2 kg', '50 kg', '2 kg'],
	stacks: { 'lat-pulldown': ['5 kg', '100 kg', '5 kg'] },
	fixed: { stone: ['105 kg', '90 kg', '120 kg'] },
	equipment: ['box', 'sled'],
})

function kindAndName(implement: Implement): unknown {
	return [implement.kind, implement.kind === 'discs' ? undefined : implement.name]
}

describe('the word that carries the load', () => {
	test.each([
		[['barbell'], ['bar', 'barbell']],
		[['safety-bar'], ['bar', 'safety-bar']],
		[['dumbbell'], ['row', 'dumbbell']],
		[['dumbbells'], ['row', 'dumbbells']],
		[['lat-pulldown'], ['row', 'lat-pulldown']],
		[['stone'], ['row', 'stone']],
		[['sled'], ['free', 'sled']],
		[['plate'], ['discs', undefined]],
		[
			['box', 'barbell'],
			['bar', 'barbell'],
		],
		[
			['box', 'dumbbell'],
			['row', 'dumbbell'],
		],
		[
			['box', 'sled'],
			['free', 'box'],
		],
		[[], ['free', undefined]],
	] as const)('%j in a hall', (equipment, expected) => {
		expect(kindAndName(carrier(equipment, northHall))).toEqual(expected)
	})

	test.each([
		[['barbell'], ['bar', 'barbell']],
		[
			['box', 'hex-bar'],
			['bar', 'hex-bar'],
		],
		[['light-barbell'], ['bar', 'light-barbell']],
		[['pull-up-bar'], ['free', 'pull-up-bar']],
		[['dip-bars'], ['free', 'dip-bars']],
		[['dumbbell'], ['free', 'dumbbell']],
		[['plate'], ['discs', undefined]],
		[[], ['free', undefined]],
	] as const)('%j without a gym', (equipment, expected) => {
		expect(kindAndName(carrier(equipment, undefined))).toEqual(expected)
	})
})

describe('what the gym lacks', () => {
	test.each([
		[['hex-bar'], 'North Hall has no hex bar'],
		[['barbell', 'extension-bench'], 'North Hall has no extension bench'],
		[['kettlebell', 'hex-bar'], 'North Hall has no kettlebell'],
	] as const)('%j', (equipment, reason) => {
		expect(implementFor(movement(equipment), northHall, 'kg', [])).toEqual({ missing: 'equipment', reason })
	})

	test('a hall without plates, dumbbells or stacks lacks those', () => {
		const garage = gym({ bars: { barbell: '20 kg' } })
		for (const word of ['plate', 'dumbbell', 'lat-pulldown', 'stone']) {
			expect(implementFor(movement([word]), garage, 'kg', [])).toMatchObject({ missing: 'equipment' })
		}
	})
})

describe('what a lifter uses in place of something', () => {
	const span = { start: 0, end: 0 }
	const uses = [{ implement: { text: 'light-barbell', span }, insteadOf: { text: 'barbell', span }, span }]
	const school = gym({ bars: { barbell: '20 kg', 'light-barbell': '10 kg' } })

	test('carries the load where the movement asks for the other', () => {
		expect(implementFor(movement(['barbell']), school, 'kg', uses)).toMatchObject({ kind: 'bar', name: 'light-barbell' })
		expect(implementFor(movement(['safety-bar']), gym({ bars: { 'safety-bar': '25 kg' } }), 'kg', uses)).toMatchObject({
			name: 'safety-bar',
		})
	})

	test('is missing where the gym has none, with what it is to stand for', () => {
		const reason = 'North Hall has no light barbell to use as barbell'
		expect(implementFor(movement(['barbell']), gym({ bars: { barbell: '20 kg' } }), 'kg', uses)).toEqual({
			missing: 'equipment',
			reason,
		})
	})

	test('has no mass where no gym states one', () => {
		expect(implementFor(movement(['barbell']), undefined, 'kg', uses)).toMatchObject({ kind: 'free' })
	})
})

describe('two hands', () => {
	const handles = ['farmers-handle']
	const yard = (...plates: string[]) => gym({ bars: { 'farmers-handle': '10 kg' }, plates })

	test('take discs in fours: each side of each handle', () => {
		const pair = (place: ReturnType<typeof gym>) => carrier(handles, place, 'kg', { hands: 2 })
		// Four discs of 20 kg are one a side: 10 + 2 × 20 = 50. Three are none.
		expect(load('60', pair(yard('20 kg x 4'))).load.valueOf()).toBe(50)
		expect(load('60', pair(yard('20 kg x 3'))).load.valueOf()).toBe(10)
		// Eight are two a side.
		expect(load('90', pair(yard('20 kg x 8'))).load.valueOf()).toBe(90)
		// One handle has two a side of four.
		expect(load('90', carrier(handles, yard('20 kg x 4'))).load.valueOf()).toBe(90)
	})
})

describe('load on top of bodyweight', () => {
	test('is the sum of any discs, one by one', () => {
		const added = carrier([], northHall, 'kg', { loadAdded: true })
		expect(load('3.7', added).load.valueOf()).toBe(3.75)
		expect(load('6.1', added).load.valueOf()).toBe(6.25)
		expect(load('0.5', added).load.valueOf()).toBe(0)
		expect(load('0.5', added).perSide).toBeUndefined()
	})

	test('uses no more discs than there are', () => {
		const added = carrier([], gym({ plates: ['10 kg x 1', '2.5 kg x 2'] }), 'kg', { loadAdded: true })
		expect(load('14.9', added).load.valueOf()).toBe(15)
		expect(load('20', added)).toMatchObject({ beyond: true })
		expect(load('20', added).load.valueOf()).toBe(15)
	})

	test('goes by steps of 1.25 kg or 2.5 lb without a gym, and in a gym that states no discs', () => {
		const dumbbellsOnly = gym({ dumbbells: ['2 kg', '20 kg', '2 kg'] })
		for (const place of [undefined, dumbbellsOnly]) {
			expect(load('8.2', carrier([], place, 'kg', { loadAdded: true })).load.valueOf()).toBe(8.75)
			expect(load('8.6', carrier([], place, 'lb', { loadAdded: true }), 'lb').load.valueOf()).toBe(7.5)
		}
	})

	test('comes from the dumbbells where the movement names them', () => {
		const held = carrier(['dumbbell'], northHall, 'kg', { loadAdded: true })
		expect(load('11.2', held).load.valueOf()).toBe(12)
	})

	test('an assisted lift takes any help', () => {
		const added = carrier([], northHall, 'kg', { loadAdded: true })
		expect(load('-12.3', added)).toMatchObject({ beyond: false, under: false })
		expect(load('-12.3', added).load.valueOf()).toBe(-12.3)
	})
})

describe('discs for several places', () => {
	test('a bar takes them in pairs: of three discs one stays on the rack', () => {
		const bar = carrier(['barbell'], gym({ bars: { barbell: '20 kg' }, plates: ['20 kg x 3'] }))
		expect(load('100', bar)).toMatchObject({ beyond: true })
		expect(load('100', bar).load.valueOf()).toBe(60)
	})

	test('two hands need discs for both bars', () => {
		const handles = gym({ bars: { handle: '10 kg' }, plates: ['20 kg x 4', '10 kg x 2'] })
		const one = carrier(['handle'], handles)
		const two = carrier(['handle'], handles, 'kg', { hands: 2 })
		expect(load('110', one).perSide?.map(Number)).toEqual([20, 20, 10])
		expect(load('50', two).perSide?.map(Number)).toEqual([20])
		expect(load('110', two)).toMatchObject({ beyond: true })
		expect(load('110', two).load.valueOf()).toBe(50)
	})

	test('a mass that stands twice is there as often as both lines say', () => {
		const bar = carrier(['barbell'], gym({ bars: { barbell: '20 kg' }, plates: ['20 kg x 1', '20 kg x 3'] }))
		expect(load('100', bar).perSide?.map(Number)).toEqual([20, 20])
		const open = carrier(['barbell'], gym({ bars: { barbell: '20 kg' }, plates: ['20 kg x 2', '20 kg'] }))
		expect(load('180', open).perSide).toHaveLength(4)
	})

	test('a disc of nothing is left out', () => {
		const bar = carrier(['barbell'], gym({ bars: { barbell: '20 kg' }, plates: ['0 kg', '10 kg x 2'] }))
		expect(load('40', bar).perSide?.map(Number)).toEqual([10])
	})

	test('a hall that names a bar and no discs has the usual ones', () => {
		const pounds = carrier(['barbell'], gym({ bars: { barbell: '45 lb' } }), 'lb')
		expect(load('230', pounds, 'lb').perSide?.map(Number)).toEqual([45, 45, 2.5])
	})
})
