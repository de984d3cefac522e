import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { exact, share } from '../../../language/compute/exact.ts'
import { inUnit, kilogramsPerPound, massText } from '../../../language/compute/mass.ts'
import { decimals, mass } from './samples.ts'

describe('inUnit', () => {
	test('a pound is exactly 0.45359237 kg', () => {
		expect(inUnit(mass('1 lb'), 'kg').toFraction()).toBe('45359237/100000000')
		expect(inUnit(mass('45 lb'), 'kg').equals(exact('20.41165665'))).toBe(true)
	})

	test('a mass in its own unit is itself', () => {
		const written = mass('72.5 kg')
		expect(inUnit(written, 'kg')).toBe(written.amount)
	})

	test('there and back is the same mass', () => {
		fc.assert(
			fc.property(decimals(0, 600), amount => {
				const pounds = { amount: inUnit({ amount, unit: 'kg' }, 'lb'), unit: 'lb' } as const
				expect(inUnit(pounds, 'kg').equals(amount)).toBe(true)
				const kilograms = { amount: inUnit({ amount, unit: 'lb' }, 'kg'), unit: 'kg' } as const
				expect(inUnit(kilograms, 'lb').equals(amount)).toBe(true)
			}),
		)
	})

	test('it does not matter whether a share is taken before or after', () => {
		fc.assert(
			fc.property(decimals(0, 600), decimals(0, 120), (amount, percent) => {
				const after = share(percent, inUnit({ amount, unit: 'lb' }, 'kg'))
				const before = inUnit({ amount: share(percent, amount), unit: 'lb' }, 'kg')
				expect(after.equals(before)).toBe(true)
				expect(before.div(kilogramsPerPound).equals(share(percent, amount))).toBe(true)
			}),
		)
	})
})

test('a mass in words keeps its unit', () => {
	expect(massText(mass('72.50 kg'))).toBe('72.5 kg')
	expect(massText(mass('225 lb'))).toBe('225 lb')
	expect(massText({ amount: inUnit(mass('100 kg'), 'lb'), unit: 'lb' })).toBe('220.462262 lb')
})
