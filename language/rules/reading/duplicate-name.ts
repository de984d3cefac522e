import type { Definition } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Rule } from '../rule.ts'
import page from './duplicate-name.md'

export const duplicateName: Rule = {
	code: 'duplicate-name',
	area: 'reading',
	level: 'error',
	summary: 'Two definitions of one kind share a name, or a lifter and a team do.',
	source: "the language's own rules",
	fix: 'to confirm',
	since: '0.1.0',
	page,
	checkAny,
}

function* checkAny(definition: Definition, programme: Programme): Iterable<Finding> {
	const { kind, name } = definition
	// Logs of one lifter, and `rules`, may stand in any number of files and are one.
	if (kind === 'log' || kind === 'rules' || name.text === '') return
	const [first] = programme.namesakes(kind, name.text)
	const lifter = kind === 'team' && first === definition ? programme.find('lifter', name.text) : undefined
	if (lifter) {
		const free = freeName(definition, programme)
		yield {
			span: name.span,
			message: `There is a lifter "${name.text}" too, so a plan or limits for "${name.text}" could mean either. Give one of them another name.`,
			related: [
				{ definition: lifter, span: lifter.header, message: 'The lifter; where the name stands, it is the one that is meant.' },
			],
			corrections: [{ title: `Call this one "${free}"`, edits: [{ span: name.span, text: free }] }],
		}
	}
	if (!first || first === definition) return
	const free = freeName(definition, programme)
	yield {
		span: name.span,
		message: `There is a ${kind} "${name.text}" already: wherever the name stands, the first one is meant. Give this one a name of its own.`,
		related: [{ definition: first, span: first.header, message: 'The first one.' }],
		corrections: [{ title: `Call this one "${free}"`, edits: [{ span: name.span, text: free }] }],
	}
}

function freeName({ kind, name }: Definition, programme: Programme): string {
	const kinds = kind === 'team' ? (['team', 'lifter'] as const) : [kind]
	let number = 2
	while (kinds.some(one => programme.find(one, `${name.text}-${number}`))) number++
	return `${name.text}-${number}`
}
