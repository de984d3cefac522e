import { expect, test } from 'vitest'
import { hindranceOfHost } from '../../../client/editor/host.ts'

test('an editor with Node 22 or later will do', () => {
	expect(hindranceOfHost('22.15.1')).toBeUndefined()
	expect(hindranceOfHost('24.0.0')).toBeUndefined()
})

test('an older editor is named with what it lacks', () => {
	expect(hindranceOfHost('20.19.4')).toMatch(/built on Node 20\.19\.4, and Barstave needs Node 22/)
})
