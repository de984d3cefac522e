import { expect, test } from 'vitest'
import { reserveOf } from '../../../language/compute/effort.ts'
import { exact } from '../../../language/compute/exact.ts'

test.each([
	['rpe', '8', 2],
	['rpe', '8.5', 1.5],
	['rpe', '10', 0],
	['rir', '2', 2],
	['rir', '0', 0],
	['rir', '1.5', 1.5],
] as const)('%s %s leaves %d', (scale, value, reserve) => {
	expect(reserveOf({ scale, value: exact(value) }).valueOf()).toBe(reserve)
})
