import type { Line } from '../parser/lines.ts'
import { spacesBetween } from '../spelling/spacing.ts'
import { spell } from '../spelling/spell.ts'
import { alignComments, alignWeeks } from './alignment.ts'
import type { Element } from './element.ts'
import { placeComments } from './place-comments.ts'
import type { Comment, Sections } from './sections.ts'

/** Everything that stands in a text, in its order, each with its new place. */
export function layOut(text: string, { sections, comments }: Sections): Element[] {
	const elements: Element[] = []
	let taken = 0
	let previous: Element | undefined
	const put = (next: Element | undefined) => {
		const until = next?.start ?? text.length
		const between: Element[] = []
		for (let comment = comments[taken]; comment && comment.start < until; comment = comments[++taken])
			between.push(commentElement(comment))
		placeComments(text, previous, between, next)
		elements.push(...between)
		if (next) elements.push(next)
		previous = next
	}
	for (const section of sections) {
		if (section.lines) for (const line of section.lines) for (const element of elementsOf(line)) put(element)
		else put({ ...section, kind: 'kept', text: text.slice(section.start, section.end), line: undefined, breaks: 1, spaces: 0 })
	}
	put(undefined)
	alignWeeks(elements)
	alignComments(elements)
	return elements
}

/** The words of a line in its own order; where each stands follows from what is before it. */
function elementsOf(line: Line): Element[] {
	const words = spell(line)
	return words.map(({ text, type, start, end }, index) => ({
		kind: index === 0 ? 'first' : 'word',
		text,
		start,
		end,
		line,
		breaks: index === 0 ? 1 : 0,
		spaces: index === 0 ? 0 : spacesBetween(words[index - 1]!, words[index]!),
		type,
	}))
}

function commentElement({ text, start, end, toEndOfLine }: Comment): Element {
	return { kind: toEndOfLine ? 'comment-to-end' : 'comment', text, start, end, line: undefined, breaks: 0, spaces: 1 }
}
