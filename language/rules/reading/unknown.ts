import type { Finding } from '../../model/problem.ts'
import type { Name } from '../../model/text.ts'
import { nearestNames } from '../../names/nearest.ts'
import { inWords } from '../common/words.ts'

/** A name that stands for nothing, with those that are near; `otherwise` is said where none is. */
export function unknown(name: Name, begin: string, candidates: readonly string[], otherwise?: string): Finding {
	const near = nearestNames(name.text, candidates)
	const question = near.length > 0 ? `Did you mean ${inWords(near, 'or')}?` : otherwise
	return {
		span: name.span,
		message: question ? `${begin} ${question}` : begin,
		corrections: near.map(text => ({ title: `Write "${text}"`, edits: [{ span: name.span, text }] })),
	}
}
