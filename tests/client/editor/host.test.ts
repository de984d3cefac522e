import { expect, test } from 'vitest'
import { isTooOld } from '../../../client/editor/host.ts'

test('an editor with Node 22 or later will do', () => {
	expect(isTooOld('22.15.1')).toBe(false)
	expect(isTooOld('24.0.0')).toBe(false)
})

test('an older editor will not', () => {
	expect(isTooOld('20.19.4')).toBe(true)
})
