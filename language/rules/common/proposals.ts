import type { Block, Definition, Item, Session } from '../../model/definitions.ts'
import type { Prescription, SetGroup } from '../../model/prescription.ts'
import type { Programme } from '../../model/programme.ts'
import type { Correction } from '../../model/reading.ts'
import { isNoWorse } from './trial-plans.ts'

/** A correction, and the definition as it would be with it. */
export interface Proposal<D extends Definition> {
	readonly correction: Correction
	readonly changed: D
}

/** Enough to choose from. */
const mostOffered = 4

/** Those of some proposals that take a report of a code away and bring none of another, for when somebody asks. */
export function soundOnes<D extends Definition>(
	code: string,
	definition: D,
	programme: Programme,
	proposals: () => readonly Proposal<D>[],
): () => readonly Correction[] {
	return () => {
		const reportsIf = programme.trialsOf(definition)
		if (reportsIf === undefined) return []
		const before = reportsIf(definition)
		const sound: Correction[] = []
		for (const { correction, changed } of proposals()) {
			if (sound.length === mostOffered) break
			if (isNoWorse(before, reportsIf(changed), code)) sound.push(correction)
		}
		return sound
	}
}

/** The block with a session changed. */
export function withSession(block: Block, session: Session, change: (session: Session) => Session): Block {
	return { ...block, sessions: block.sessions.map(each => (each === session ? change(each) : each)) }
}

/** The block with an item changed, or taken out. */
export function withItem(block: Block, item: Item, change: (item: Item) => Item | undefined): Block {
	const sessions = block.sessions.map(session => {
		if (!session.items.includes(item)) return session
		return { ...session, items: session.items.flatMap(each => (each === item ? (change(each) ?? []) : each)) }
	})
	return { ...block, sessions }
}

/** The block with some of its set groups changed. */
export function withGroups(block: Block, change: (group: SetGroup) => SetGroup): Block {
	const changed = (prescription: Prescription | undefined) =>
		prescription && { ...prescription, groups: prescription.groups.map(change) }
	const items = (session: Session) =>
		session.items.map(item => ({
			...item,
			everyWeek: changed(item.everyWeek),
			weekLines: item.weekLines.map(line => ({ ...line, prescription: changed(line.prescription) })),
		}))
	return { ...block, sessions: block.sessions.map(session => ({ ...session, items: items(session) })) }
}
