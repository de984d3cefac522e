import { lastTrainingWeek } from '../../compute/outline.ts'
import type { CalendarWeek } from './week-rows.ts'

/**
 * The weeks as later ones are held against them. Where one plan of a lifter deloads and another does not, the week is no deload, but the
 * lighter loads of the one are no step down either: there it stands with the sessions of its own last training week.
 */
export function withoutLoneDeloads(weeks: readonly CalendarWeek[]): readonly CalendarWeek[] {
	return weeks.map(week => {
		if (week.deload || !week.sessions.some(session => session.deload)) return week
		const deloading = new Set(week.sessions.filter(session => session.deload).map(session => session.plan))
		const others = week.sessions.filter(session => !deloading.has(session.plan))
		const before = [...deloading].flatMap(plan => {
			const own = weeks.map(({ sessions, ...each }) => {
				const ofPlan = sessions.filter(session => session.plan === plan)
				const hasWork = ofPlan.some(session => session.items.some(item => item.working))
				return { ...each, sessions: ofPlan, hasWork, deload: ofPlan.some(session => session.deload) }
			})
			return lastTrainingWeek(own, week.week)?.sessions ?? []
		})
		return { ...week, sessions: [...before, ...others] }
	})
}
