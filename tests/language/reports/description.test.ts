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

	it('leaves out what is not said', () => {
		expect(factsOf('movement', 'bare', 'movement bare')).toEqual({})
	})
})
