import type { Definition } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Rule } from '../rule.ts'
import page from './replaces-built-in.md'

export const replacesBuiltIn: Rule = {
	code: 'replaces-built-in',
	area: 'reading',
	level: 'hint',
	summary: 'A definition of the workspace stands in place of a built-in one.',
	source: "the language's own rules",
	fix: 'none',
	since: '0.1.0',
	page,
	checkAny,
}

function* checkAny(definition: Definition, programme: Programme): Iterable<Finding> {
	const { kind, name, header } = definition
	// Limits never replace: they merge, fact by fact.
	if (kind === 'limits' || programme.isBuiltIn(definition)) return
	const builtIn = programme.builtIn(kind, name.text)
	if (!builtIn) return
	yield {
		span: header,
		message: `This ${kind} stands in place of the library's "${name.text}": nothing of the built-in one counts any more.`,
		related: [{ definition: builtIn, span: builtIn.header, message: 'The built-in one.' }],
	}
}
