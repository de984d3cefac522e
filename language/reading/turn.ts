import type * as tree from '../grammar/generated/ast.ts'
import type { Session, Turn } from '../model/definitions.ts'
import type { Name } from '../model/text.ts'
import { nearest } from '../names/nearest.ts'
import type { Reader } from './reader.ts'
import { readSessionDays } from './session-days.ts'

export function readTurn(reader: Reader, line: tree.TurnLine): Turn {
	const sessions = (line.sessions ?? []).map((_, index) => reader.name(line, 'sessions', index))
	return { sessions, days: readSessionDays(reader, line.days).days, span: reader.span(line) }
}

/** A turn names sessions of its own block, which have no day of their own and stand in no other turn. */
export function checkTurns(reader: Reader, turns: readonly Turn[], sessions: readonly Session[]): void {
	const known = new Map<string, Name>()
	for (const turn of turns) {
		const only = turn.sessions[0]
		if (only && turn.sessions.length === 1) {
			const message = `${only.text} alone has nothing to take turns with. Name the others too, or write its days behind the session: on monday, thursday.`
			reader.fault('syntax', turn.span, message)
		}
		for (const name of new Set(turn.sessions.map(one => one.text))) {
			const place = turn.sessions.find(one => one.text === name)
			if (place === undefined) continue
			const session = sessions.find(one => one.name.text === name)
			if (session === undefined) reportUnknown(reader, place, sessions)
			else if (session.days.length > 0) reportOwnDay(reader, session)
			if (known.has(name)) {
				const message = `${name} takes its turn in two lines; it can stand in one. Take it out of this one.`
				reader.fault('stated-twice', place.span, message)
			}
			known.set(name, place)
		}
	}
}

function reportUnknown(reader: Reader, { text, span }: Name, sessions: readonly Session[]): void {
	const names = sessions.map(session => session.name.text)
	const near = nearest(text, names)
	const end = near ? `Did you mean "${near}"?` : names.length > 0 ? `Its sessions: ${names.join(', ')}.` : 'It has no sessions.'
	const corrections = near ? [{ title: `Write "${near}"`, edits: [{ span, text: near }] }] : []
	reader.fault('unknown-name', span, `This block has no session "${text}" to take a turn. ${end}`, corrections)
}

function reportOwnDay(reader: Reader, { name, title, days, header }: Session): void {
	const from = title?.span.end ?? name.span.end
	const span = { start: days[0]?.span.start ?? from, end: header.end }
	const corrections = [{ title: 'Leave the days to the turn', edits: [{ span: { start: from, end: header.end }, text: '' }] }]
	const message = `${name.text} has its days from the turn; it needs none of its own. Take one of the two away.`
	reader.fault('stated-twice', span, message, corrections)
}
