import type { Exact } from '../../model/quantities.ts'
import type { Estimator } from '../../model/vocabulary.ts'
import { isHeavy, isOnceAWeek } from './heavy.ts'
import type { PlacedSession } from './placed-sessions.ts'

/** Work for the back on two days in a row: a heavy hinge beside a heavy squat, or beside a hinge that may stand once a week only. */
export interface HeavyPair<S extends PlacedSession> {
	readonly earlier: HeavyDay<S>
	readonly later: HeavyDay<S>
	/** Days from one to the other. */
	readonly gap: number
}

interface HeavyDay<S extends PlacedSession> {
	readonly session: S
	readonly item: S['items'][number]
	readonly kind: 'heavy-hinge' | 'heavy-squat' | 'once-a-week-hinge'
}

/** At most one for two days. Over all sessions that have a day, also across the borders of weeks, blocks and plans. */
export function heavyPairs<S extends PlacedSession>(
	sessions: readonly S[],
	mark: Exact,
	apartDays: number,
	estimator: Estimator,
): readonly HeavyPair<S>[] {
	const days = sessions
		.flatMap(session => heavyDays(session, mark, estimator))
		.sort((a, b) => (a.session.day ?? 0) - (b.session.day ?? 0))
	const found = new Map<string, HeavyPair<S>>()
	for (const [index, later] of days.entries()) {
		for (let before = index - 1; before >= 0; before--) {
			const earlier = days[before]
			const gap = (later.session.day ?? 0) - (earlier?.session.day ?? 0)
			if (earlier === undefined || gap >= apartDays) break
			const key = `${earlier.session.dayKey} ${later.session.dayKey}`
			if (gap > 0 && collide(earlier, later) && !found.has(key)) found.set(key, { earlier, later, gap })
		}
	}
	return [...found.values()]
}

function heavyDays<S extends PlacedSession>(session: S, mark: Exact, estimator: Estimator): readonly HeavyDay<S>[] {
	if (session.day === undefined) return []
	const items = session.items as readonly S['items'][number][]
	const known = new Set<string>()
	return items.flatMap((item): HeavyDay<S>[] => {
		// One of each movement is enough to compare.
		if (known.has(item.movementName.text)) return []
		const pattern = item.movement?.pattern?.value
		if (!item.working || (pattern !== 'hinge' && pattern !== 'squat')) return []
		const ofHeavy = pattern === 'hinge' ? 'heavy-hinge' : 'heavy-squat'
		const ofLight = pattern === 'hinge' && isOnceAWeek(item) ? 'once-a-week-hinge' : undefined
		const kind = isHeavy(item, mark, estimator) ? ofHeavy : ofLight
		if (kind === undefined) return []
		known.add(item.movementName.text)
		return [{ session, item, kind }]
	})
}

/** The same movement twice is a matter of its own cap. */
function collide(a: HeavyDay<PlacedSession>, b: HeavyDay<PlacedSession>): boolean {
	if (a.item.movementName.text === b.item.movementName.text) return false
	const [hinge, other] = a.kind === 'heavy-hinge' ? [a, b] : [b, a]
	if (hinge.kind !== 'heavy-hinge') return false
	return other.kind !== 'heavy-hinge' || isOnceAWeek(hinge.item) || isOnceAWeek(other.item)
}
