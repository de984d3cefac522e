import { readdirSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { daysBetween } from '../../../language/compute/calendar.ts'
import { schedulePlan } from '../../../language/compute/schedule.ts'
import { pathOf } from './harness/markdown.ts'
import { described, folderOf, isAtLeast, listed, marksIn, problemsOfTexts, textsBelow } from './harness/workspace.ts'

describe('examples/faults', () => {
	test.each(readdirSync(pathOf('examples/faults')))('%s', folder => {
		const texts = textsBelow(pathOf(`examples/faults/${folder}`))
		const marks = marksIn(texts)
		const codes = new Set(marks.map(mark => mark.code))
		const found = problemsOfTexts(texts)
		expect(codes).toContain(folder)
		expect(listed(found.filter(one => codes.has(one.code)))).toEqual(listed(marks))
		const beside = found.filter(one => !codes.has(one.code) && isAtLeast(one.problem.level, 'warning'))
		expect(described(beside)).toEqual([])
	})
})

test('nothing is wrong with the example club', () => {
	const found = problemsOfTexts(textsBelow(pathOf('examples/club')))
	expect(described(found.filter(one => isAtLeast(one.problem.level, 'warning')))).toEqual([])
})

describe('the year of one club', () => {
	const texts = textsBelow(pathOf('examples/season'))

	test('is quiet, to the last hint', () => {
		expect(described(problemsOfTexts(texts))).toEqual([])
	})

	test('is short', () => {
		const lines = [...texts.values()].reduce((sum, text) => sum + text.trimEnd().split('\n').length, 0)
		expect(lines).toBeLessThan(1200)
	})

	test('holds 52 weeks, two meets and the holidays for each of thirty lifters', () => {
		const folder = folderOf(texts)
		const season = folder.all('plan').filter(plan => plan.name.text.startsWith('season/'))
		expect(new Set(season.map(plan => plan.lifter.text)).size).toBe(30)
		for (const plan of season) {
			const dates = schedulePlan(plan, folder).sessions.map(session => session.date)
			expect(plan.meets.map(meet => meet.on)).toEqual(['2026-12-19', '2027-05-22'])
			expect(dates[0]).toBe('2026-09-21')
			// One of them loses a week to an ankle, and makes it up at the end.
			const weeks = plan.lifter.text === 'leif-garrow' ? 53 : 52
			expect(Math.ceil((daysBetween('2026-09-21', dates.at(-1)!) + 1) / 7)).toBe(weeks)
			expect(dates.filter(date => date >= '2026-12-21' && date <= '2027-01-03')).toEqual([])
		}
	})

	test('has each in the gym of the day, on the bar of the lifter', () => {
		const folder = folderOf(texts)
		const away = schedulePlan(folder.find('plan', 'season/tove-marrin')!, folder).sessions.filter(
			session => session.gym?.name.text === 'harbour-hotel',
		)
		expect(away.map(session => session.date)).toEqual(['2027-04-05', '2027-04-07', '2027-04-09'])
		expect(away.flatMap(session => session.items.map(item => item.movementName.text))).toContain('goblet-squat')
		// Cato presses on the bar of 15 kg: 67.5% of 35 kg is 23.625 kg; 15 + 5 for the collars + 2 x (1.25 + 0.5) is 23.5 kg.
		const cato = schedulePlan(folder.find('plan', 'season/cato-ilvers')!, folder).sessions[0]!
		const press = cato.items.find(item => item.movementName.text === 'bench-press')!.sets[0]!.computed
		expect([press.exact, press.load, press.perSide?.map(String)].map(String)).toEqual(['23.625', '23.5', '1.25,0.5'])
	})
})
