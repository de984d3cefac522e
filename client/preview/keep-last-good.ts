import type { CappedMovement } from '../../language/reports/cap-exposures.ts'
import type { Picture, PreviewData, Subject, Ways } from '../../language/reports/preview.ts'

/** What the page shows: the newest data, and where a text is broken, what was last known of it. */
export interface Shown {
	readonly data: PreviewData
	/** Blocks that are shown as they were; `null`: all of it. */
	readonly staleBlocks: readonly string[] | null
}

/** Puts new data in the place of what is shown, but for the parts whose text cannot be read: these stay, so that nothing goes blank. */
export function keepLastGood(last: Shown | null, next: PreviewData): Shown {
	if (next.stale === null || last === null) return { data: next, staleBlocks: [] }
	const { chosen, picture: before, team, log } = last.data
	const kept = { chosen, picture: before, team, log }
	// The subject itself may be what cannot be read: then nothing is chosen, and what was shown stays.
	if (next.chosen === null) return { data: { ...next, ...kept }, staleBlocks: null }
	if (!isSameSubject(chosen, next.chosen)) return { data: next, staleBlocks: [] }
	const { blocks } = next.stale
	if (before === null || next.picture === null) return { data: { ...next, ...kept }, staleBlocks: null }
	if (blocks === null) return { data: { ...next, picture: { ...before, problems: next.picture.problems } }, staleBlocks: null }
	return { data: { ...next, picture: merge(before, next.picture, new Set(blocks)) }, staleBlocks: blocks }
}

function isSameSubject(a: Subject | null, b: Subject): boolean {
	return a !== null && a.kind === b.kind && a.name === b.name
}

/** The new picture with the sessions and weeks of the stale blocks as they were. */
function merge(before: Picture, next: Picture, stale: ReadonlySet<string>): Picture {
	return {
		...next,
		...mergeSheets(before, next, stale),
		...mergeVolumes(before, next, stale),
		// These are about the whole plan: they wait until all of it can be read.
		calendar: before.calendar,
		gates: before.gates,
		ways: freshWays(next.ways, stale),
	}
}

/** The loads of stale blocks are old: how the new ones come about would not explain them. */
function freshWays(ways: Ways | null, stale: ReadonlySet<string>): Ways | null {
	if (ways === null) return null
	return { ...ways, ofSessions: ways.ofSessions.filter(({ block }) => !stale.has(block)) }
}

function mergeSheets(before: Picture, next: Picture, stale: ReadonlySet<string>): Pick<Picture, 'sheet' | 'written'> {
	if (before.sheet === null || next.sheet === null) return { sheet: next.sheet ?? before.sheet, written: next.written }
	const fresh = next.sheet.sessions
		.map((session, index) => ({ session, places: next.written?.ofSets[index] ?? [] }))
		.filter(({ session }) => !stale.has(session.block))
	// The text has moved since: an old place would lead astray, so there is none.
	const kept = before.sheet.sessions.filter(session => stale.has(session.block)).map(session => ({ session, places: [] }))
	const all = [...fresh, ...kept].sort((a, b) => (a.session.date < b.session.date ? -1 : a.session.date > b.session.date ? 1 : 0))
	return {
		sheet: { ...next.sheet, sessions: all.map(({ session }) => session) },
		written: next.written && { ...next.written, ofSets: all.map(({ places }) => places) },
	}
}

type VolumeParts = Pick<Picture, 'volume' | 'needs' | 'caps'>

function mergeVolumes(before: Picture, next: Picture, stale: ReadonlySet<string>): VolumeParts {
	if (before.volume === null || next.volume === null) {
		const { volume, needs, caps } = next.volume === null ? before : next
		return { volume, needs, caps }
	}
	const weeksOf = (picture: Picture, keep: boolean) =>
		picture
			.volume!.weeks.map((week, index) => ({ week, index, picture, needs: picture.needs[index] ?? null }))
			.filter(({ week }) => stale.has(week.block) === keep)
	const all = [...weeksOf(next, false), ...weeksOf(before, true)].sort((a, b) => a.week.week - b.week.week)
	return {
		volume: { ...next.volume, weeks: all.map(({ week }) => week) },
		needs: all.map(({ needs }) => needs),
		caps: before.caps.map(cap => ({
			...cap,
			exposures: all.map(({ picture, index }) => sameCap(picture.caps, cap)?.exposures[index] ?? 0),
		})),
	}
}

function sameCap(caps: readonly CappedMovement[], { movement, fromPercent }: CappedMovement): CappedMovement | undefined {
	return caps.find(one => one.movement === movement && one.fromPercent === fromPercent)
}
