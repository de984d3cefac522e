import type * as tree from '../grammar/generated/ast.ts'
import type { Breakdown, Need } from '../model/definitions.ts'
import type { Fault } from '../model/reading.ts'
import type { Name, QuotedText } from '../model/text.ts'
import { links, muscles } from '../model/vocabulary.ts'
import { fact, type Reader } from './reader.ts'

export function readBreakdown(reader: Reader, node: tree.Breakdown, faults: readonly Fault[]): Breakdown {
	let weakLinks: Breakdown['weakLinks']
	let caution: QuotedText | undefined
	const needs: Need[] = []
	const answeredBy: Name[] = []
	for (const line of node.lines ?? []) {
		if (reader.common(line, reader.span(node))) continue
		switch (line.$type) {
			case 'WeakLinkLine':
				if (reader.first('weak link', line))
					weakLinks = fact(reader.words(line, 'links', links, 'a link of the chain'), reader.span(line))
				break
			case 'NeedsLine': {
				const what = reader.word(line, 'what', [...links, ...muscles], 'a link of the chain or a muscle')
				const amount = reader.exact(line.amount)
				if (what && amount && line.unit)
					needs.push({ what, amount, unit: line.unit.startsWith('session') ? 'sessions' : 'sets', span: reader.span(line) })
				break
			}
			case 'AnsweredByLine': {
				const names = reader.referencesIn(line, 'movements', 'movement')
				if (reader.first('answered by', line)) answeredBy.push(...names)
				break
			}
			case 'CautionLine':
				if (reader.first('caution', line)) caution = reader.text(line, 'text')
		}
	}
	return { kind: 'breakdown', weakLinks, needs, answeredBy, caution, ...reader.frame(node, faults) }
}
