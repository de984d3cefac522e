import type { HowOften } from '../../model/definitions.ts'
import type { CalendarDate } from '../../model/quantities.ts'
import type { Evidence, ShownFeat } from './evidence.ts'

/** One session in which something was shown, or a `passed` line that tells of several. */
export interface ShownSession {
	readonly sets: number
	readonly sessions: number
	readonly on: CalendarDate | undefined
	readonly by: Evidence
}

/** Feats by session: the sets of one log entry are one, each `passed` line and each best stands for itself. */
export function sessionsOf(feats: readonly ShownFeat[]): readonly ShownSession[] {
	const bySession = new Map<unknown, ShownSession>()
	for (const { feat, by, on } of feats) {
		const { sets, sessions } = feat.kind === 'sign-off' ? { sets: 1, sessions: 1 } : feat.often
		const key = by.kind === 'logged' ? by.entry : by
		const known = bySession.get(key)
		bySession.set(key, { sets: sets + (known?.sets ?? 0), sessions, on, by })
	}
	return [...bySession.values()]
}

/**
 * In how many sessions it was shown often enough. A `passed` line of the day of a logged session may well tell of that session, and one
 * that tells of several may tell of any before it: nothing counts twice.
 */
export function countSessions(shown: readonly ShownSession[], { sets }: HowOften): number {
	const enough = shown.filter(session => session.sets >= sets)
	const several = enough.filter(session => session.sessions > 1)
	const alone = singleSessions(enough, undefined)
	return Math.max(alone, ...several.map(line => line.sessions + singleSessions(enough, line.on)))
}

/** The sessions that stand for themselves, after a day: of each day those that are logged, or one that is told of. */
function singleSessions(shown: readonly ShownSession[], after: CalendarDate | undefined): number {
	const days = new Map<string, { logged: number; told: number }>()
	for (const { sessions, on, by } of shown) {
		if (sessions > 1 || (after !== undefined && (on === undefined || on <= after))) continue
		const day = days.get(on ?? '') ?? { logged: 0, told: 0 }
		if (by.kind === 'logged') day.logged++
		else day.told = 1
		days.set(on ?? '', day)
	}
	return [...days.values()].reduce((sum, { logged, told }) => sum + Math.max(logged, told), 0)
}
