import type { Definition } from '../model/definitions.ts'
import type { Fault } from '../model/reading.ts'
import type { Name } from '../model/text.ts'
import { nearestNames } from '../names/nearest.ts'
import { ruleOf, rules } from '../rules/registry.ts'

/** Names of rules, in `allow` and `rules` lines, that no rule has. No rule can say so itself: none knows the others. */
export function unknownRuleNames(definition: Definition): readonly Fault[] {
	const levels = definition.kind === 'rules' ? definition.levels : []
	const names = [...definition.allows, ...levels].map(line => line.rule)
	return names.filter(name => name.text !== '' && !ruleOf(name.text)).map(unknownRule)
}

function unknownRule({ text, span }: Name): Fault {
	const near = nearestNames(
		text,
		rules.map(rule => rule.code),
	)
	const question = near.length > 0 ? ` Did you mean ${near.join(' or ')}?` : ''
	const corrections = near.map(code => ({ title: `Write "${code}"`, edits: [{ span, text: code }] }))
	return { code: 'unknown-name', span, message: `No rule is called "${text}".${question}`, corrections }
}
