import { describe, expect, it } from 'vitest'
import { limitsFor } from '../../../language/compute/limits.ts'
import { workspaceOf } from '../../support/workspace.ts'

describe('limits', () => {
	it('are the built-in ones where the workspace says nothing, and tell where they come from', () => {
		const limits = limitsFor(undefined, workspaceOf())
		expect(limits.heavy?.value.fromPercent.valueOf()).toBe(85)
		expect(limits.estimator).toMatchObject({ value: 'epley', origin: 'common practice' })
	})

	it('are replaced fact by fact, never as a whole', () => {
		const limits = limitsFor('mara-lind', workspaceOf('limits house\nload rises at most 5% a week\nestimate with brzycki'))
		expect(limits.loadRise).toMatchObject({ origin: 'limits house' })
		expect(limits.loadRise?.value.valueOf()).toBe(5)
		expect(limits.estimator).toMatchObject({ value: 'brzycki', origin: 'limits house' })
		expect(limits.volumeRise).toMatchObject({ origin: 'common practice' })
		expect(limits.volumeRise?.value.valueOf()).toBe(20)
	})

	it('lead back to the definition and the line that state them', () => {
		const folder = workspaceOf('limits house\nno set above 95%')
		const limit = limitsFor(undefined, folder).noSetAbove!
		expect(limit.definition).toBe(folder.find('limits', 'house'))
		expect('limits house\nno set above 95%'.slice(limit.span.start, limit.span.end)).toBe('no set above 95%')
	})

	it('of two workspace definitions are those of the first that states the fact', () => {
		const folder = workspaceOf(
			'limits house\nbests no older than 8 weeks\nlimits yard\nbests no older than 4 weeks\nno set above 95%',
		)
		const limits = limitsFor(undefined, folder)
		expect(limits.bestsWeeks?.definition).toBe(folder.limits()[0])
		expect(limits.noSetAbove).toMatchObject({ origin: 'limits yard' })
	})
})
