import type { Definition } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Rule } from '../rule.ts'
import page from './duplicate-name.md'

export const duplicateName: Rule = {
	code: 'duplicate-name',
	area: 'reading',
	level: 'error',
	summary: 'Two definitions of one kind share a name.',
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
	let number = 2
	while (programme.find(kind, `${name.text}-${number}`)) number++
	return `${name.text}-${number}`
}
