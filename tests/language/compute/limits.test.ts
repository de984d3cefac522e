import { describe, expect, it } from 'vitest'
import { limitsFor } from '../../../language/compute/limits.ts'
import { blockIn, workspaceOf } from '../../support/workspace.ts'

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

	const club = [
		'lifter tom-aas',
		'lifter ada-lund',
		'team juniors "Juniors"\nmembers tom-aas, ada-lund',
		'team yard\nmembers tom-aas',
		'limits house\nno set above 100%\nload rises at most 9% a week',
		'limits youth for juniors\nno set above 80%\nestimate with brzycki\nheavy from 85% at most 2 sessions a week',
		'limits yard-rules for yard\nno set above 85%\nestimate with lander\nheavy from 80% at most 1 session a week',
		'limits ada for ada-lund\nno set above 90%',
	]

	it('of a lifter go before those of a team, these before the workspace’s', () => {
		const folder = workspaceOf(...club)
		const ada = limitsFor('ada-lund', folder)
		expect([ada.noSetAbove?.value.valueOf(), ada.noSetAbove?.origin]).toEqual([90, 'limits ada for ada-lund'])
		expect(ada.estimator).toMatchObject({ value: 'brzycki', origin: 'limits youth for Juniors' })
		expect(ada.loadRise).toMatchObject({ origin: 'limits house' })
		expect(ada.volumeRise).toMatchObject({ origin: 'common practice' })
		expect(limitsFor('somebody-else', folder).noSetAbove).toMatchObject({ origin: 'limits house' })
		expect(limitsFor(undefined, folder).noSetAbove).toMatchObject({ origin: 'limits house' })
	})

	it('of two teams are the stricter ones, and of a formula the first', () => {
		const tom = limitsFor('tom-aas', workspaceOf(...club))
		expect([tom.noSetAbove?.value.valueOf(), tom.noSetAbove?.origin]).toEqual([80, 'limits youth for Juniors'])
		expect(tom.heavy).toMatchObject({ value: { sessions: 1 }, origin: 'limits yard-rules for yard' })
		// By name: yard-rules stands before youth.
		expect(tom.estimator).toMatchObject({ value: 'lander' })
	})

	it('of a block are the laxest of those who run it', () => {
		const block = 'block pull\nweeks 1\nsession a on monday\nmain deadlift 3 x 3 at 70%'
		const of = (...plans: string[]) => {
			const folder = workspaceOf(...club, block, ...plans)
			return limitsFor(blockIn(folder, 'pull'), folder).noSetAbove?.value.valueOf()
		}
		expect(of()).toBe(100)
		expect(of('plan a for tom-aas\nrun pull')).toBe(80)
		expect(of('plan a for tom-aas\nrun pull', 'plan b for ada-lund\nrun pull')).toBe(90)
		expect(of('plan a for juniors\nrun pull')).toBe(90)
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
