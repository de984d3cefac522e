import { expect, test } from 'vitest'
import { readerOf } from '../../../client/views/reader/reader.ts'
import { effortOf, percentOf, setsAndWork } from '../../../client/views/sheet/wording.ts'
import type { SheetSet } from '../../../language/reports/load-sheet.ts'
import { set } from './support/invented.ts'

const reader = readerOf('en')

const plain = (text: string | null) => text?.replaceAll('\u00a0', ' ')
const work = (change: Partial<SheetSet>, firm = 1, optional = 0) =>
	plain(setsAndWork({ first: 0, set: set(change), firm, optional }, reader))

test('a set in clusters says how it is cut', () => {
	expect(work({ reps: { from: 6, to: 6 }, clusterReps: 2, clusterRestSeconds: 20 }, 4)).toBe(
		'4 × 6 in clusters of 2, 20 s between',
	)
})

test('as many reps as a time holds, and a distance for time, say so', () => {
	expect(work({ reps: null, seconds: { from: 60, to: 60 }, forReps: true }, 2)).toBe('2 × 1 min for reps')
	expect(work({ reps: null, seconds: { from: 30, to: 45 }, forReps: true }, 2)).toBe('2 × 30–45 s for reps')
	expect(work({ reps: null, metres: { from: 20, to: 20 }, forTime: true })).toBe('1 × 20 m for time')
})

test('sets until an effort say how many they may be, and where they end', () => {
	expect(work({ untilRpe: '9' }, 1, 4)).toBe('1–5 × 5')
	expect(effortOf(set({ untilRpe: '9' }), reader)).toBe('until RPE 9')
	expect(effortOf(set({ rpe: { from: '8', to: '8' }, untilRir: '1' }), reader)).toBe('RPE 8, until RIR 1')
	expect(effortOf(set(), reader)).toBeNull()
})

test('a percent of bodyweight is called one', () => {
	expect(plain(percentOf(set({ percent: { from: '50', to: '50' }, of: 'bodyweight' }), reader))).toBe('50% of bodyweight')
})
