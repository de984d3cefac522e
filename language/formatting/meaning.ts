import type { Definition } from '../model/definitions.ts'
import { spell } from '../spelling/spell.ts'
import type { Sections } from './sections.ts'

/** All that a text has beside its layout: its words, spelling apart, its comments, and what its definitions say. Equal for equal texts. */
export function substanceOf(text: string, { sections, comments }: Sections): string {
	return JSON.stringify([
		comments.map(comment => comment.text),
		sections.map(section =>
			section.lines
				? [section.lines.map(line => spell(line).map(word => word.text)), factsOf(section.definition)]
				: text.slice(section.start, section.end),
		),
	])
}

/** A definition without the places that its facts stand at; of what is wrong with it, the kinds. */
function factsOf({ faults, ...definition }: Definition): unknown {
	const codes = faults.map(({ code }) => code).filter(code => code !== 'old-spelling')
	const facts = JSON.stringify(definition, (_, value: unknown) => {
		if (typeof value === 'bigint') return value.toString()
		return isPlace(value) ? undefined : value
	})
	return [codes, facts]
}

function isPlace(value: unknown): boolean {
	return typeof value === 'object' && value !== null && Object.keys(value).join() === 'start,end'
}
