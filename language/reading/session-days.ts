import { compareDays, dayText } from '../compute/session-days.ts'
import type * as tree from '../grammar/generated/ast.ts'
import type { SessionDay } from '../model/definitions.ts'
import type { Reader } from './reader.ts'

/** The days of a session or a turn, in the order of the week, each once; `end` is where the list ends in the text. */
export function readSessionDays(
	reader: Reader,
	nodes: readonly (tree.NamedDay | tree.NumberedDay)[] | undefined,
): { readonly days: readonly SessionDay[]; readonly end: number | undefined } {
	const days: SessionDay[] = []
	let end: number | undefined
	for (const node of nodes ?? []) {
		const span = reader.span(node)
		const day = readDay(reader, node)
		if (day !== undefined && days.some(known => compareDays(known, day) === 0)) {
			const edits = [{ span: { start: end ?? span.start, end: span.end }, text: '' }]
			const message = `${dayText(day)} stands twice here; a session is there once. Keep one of them.`
			reader.fault('stated-twice', span, message, [{ title: 'Remove the second one', edits }])
		} else if (day !== undefined) days.push(day)
		end = span.end
	}
	return { days: days.sort(compareDays), end }
}

function readDay(reader: Reader, node: tree.NamedDay | tree.NumberedDay): SessionDay | undefined {
	const { part } = node
	if (node.$type === 'NamedDay') {
		const weekday = reader.weekday(node, 'day')
		return weekday && { weekday, number: undefined, part, span: reader.spanOf(node, 'day') }
	}
	const number = reader.count(node, 'number', 'Days')
	return number === undefined ? undefined : { weekday: undefined, number, part, span: reader.spanOf(node, 'number') }
}
