import { describe as about, expect, it } from 'vitest'
import type { DefinitionKind } from '../../../language/model/definitions.ts'
import { describe } from '../../../language/reports/description.ts'
import { workspaceOf } from '../../support/workspace.ts'

/** The facts of a definition in a text, by their labels. */
function factsOf(kind: DefinitionKind, name: string, text: string): Record<string, string> {
	const folder = workspaceOf(text)
	const definition = folder.find(kind, name)
	if (definition === undefined) throw new Error(`the test's text does not define ${name}`)
	return Object.fromEntries(describe(definition, folder).facts.map(({ label, text: said }) => [label, said]))
}

about('what is told of a definition', () => {
	it('has gates in the words that messages have', () => {
		const target = 'movement target "Target"\nrequires sign-off\nrequires plank held 45 s\nrequires front-squat 1 rep at 80 kg'
		expect(factsOf('movement', 'target', target)['First needs']).toBe(
			'a sign-off of Target, Plank held 45 s, Front squat 1 rep at 80 kg',
		)
		const way = `${target}\nprogression way\nstep plank\nstep target after sign-off`
		expect(factsOf('progression', 'way', way)).toEqual({ 'Step 1': 'Plank', 'Step 2': 'Target, after a sign-off of Target' })
		expect(factsOf('lifter', 'someone', `${target}\nlifter someone\npassed target sign-off on 2026-09-20`).Passed).toBe(
			'a sign-off of Target (2026-09-20)',
		)
	})

	it('of a block has a gate that names no movement', () => {
		expect(factsOf('block', 'b', 'block b\nrequires sign-off\nrequires plank held 30 s')['First needs']).toBe(
			'a sign-off, Plank held 30 s',
		)
	})

	it('of limits has the deviation that monotony is taken with', () => {
		expect(factsOf('limits', 'own', 'limits own\ndeviation sample')['Monotony is taken with']).toBe('the sample deviation')
	})

	it('of one of something is not told in the plural', () => {
		const limits =
			'limits own\ngates no older than 1 week\na lighter week every 1 week\nheavy hinge and squat at most 1 session a week, apart 1 day'
		expect(factsOf('limits', 'own', limits)).toEqual({
			'A lighter week': 'every 1 week',
			'Heavy hinge and squat': 'at most 1 session a week together, 1 day apart',
			Gates: 'no older than 1 week',
		})
		expect(factsOf('movement', 'm', 'movement m\napart 1 day').Apart).toBe('at least 1 day')
		const needs = 'breakdown b\nweak link drive\nneeds drive 1 session a week\nneeds quads 4.5 sets a week'
		expect(factsOf('breakdown', 'b', needs)['Needs a week']).toBe('drive 1 session, quads 4.5 sets')
	})

	it('of a lifter has everything that is written, with its days', () => {
		const lifter = [
			'lifter someone',
			'trains at hall',
			'trains at hotel from 2026-10-19 to 2026-10-25',
			'best back-squat 110 kg x 3 rpe 9 on 2026-09-01',
			'base back-squat 90%',
			'base deadlift 150 kg',
			'fails deadlift with back-rounding above 80% until 2026-12-31',
			'keep deadlift to 82.5% from 2026-10-01',
			'avoid pattern jump from 2026-10-01 until 2026-11-01',
		].join('\n')
		expect(factsOf('lifter', 'someone', lifter)).toEqual({
			'Trains at': 'hall, hotel from 2026-10-19 to 2026-10-25',
			Bests: 'Back squat 110 kg x 3 with 1 in reserve (2026-09-01)',
			Bases: 'Back squat 90% of the best, Deadlift 150 kg',
			Fails: 'Deadlift: Back rounds before the hips finish above 80% until 2026-12-31',
			Kept: 'Deadlift to 82.5% from 2026-10-01',
			Avoids: 'pattern jump from 2026-10-01 until 2026-11-01',
		})
	})

	it('of a block has what a deload leaves, and names who runs it once', () => {
		const plans = ['one', 'two'].map(name => `plan ${name} for bea\nstart 2026-10-05\nrun b`).join('\n')
		const facts = factsOf('block', 'b', `block b\ndeload week 4, 8 with 60% of sets at 90% of load\n${plans}\nlifter bea "Bea"`)
		expect(facts.Deload).toBe('week 4, 8 with 60% of sets at 90% of load')
		expect(facts['Run by']).toBe('Bea')
		expect(factsOf('block', 'b', 'block b\ndeload week 4 with 90% of load').Deload).toBe('week 4 with 90% of load')
	})

	it('leaves out what is not said', () => {
		expect(factsOf('movement', 'bare', 'movement bare')).toEqual({})
	})
})
