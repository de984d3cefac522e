import type { Gym, Lifter, TrainsAt } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { CalendarDate } from '../model/quantities.ts'

/**
 * The gym where a lifter trains on a date: the line whose dates hold it (of several the one that begins last), else the line without
 * dates, else the same of the lifter's team. `undefined` where nothing is said, or the gym's name is unknown.
 */
export function gymAt(lifter: Lifter | undefined, date: CalendarDate, programme: Programme): Gym | undefined {
	if (lifter === undefined) return undefined
	const lines = [lifter.trainsAt, ...programme.teamsOf(lifter.name.text).map(team => team.trainsAt)]
	const line = lines.map(each => lineAt(each, date)).find(each => each !== undefined)
	return line && programme.find('gym', line.gym.text)
}

function lineAt(lines: readonly TrainsAt[], date: CalendarDate): TrainsAt | undefined {
	let chosen: TrainsAt | undefined
	for (const line of lines) {
		if ((line.from ?? date) > date || (line.to ?? date) < date) continue
		if (chosen === undefined || priority(line) >= priority(chosen)) chosen = line
	}
	return chosen
}

/** Dated lines go before undated ones, later ones before earlier; a line with an end only begins with the calendar. */
function priority(line: TrainsAt): string {
	return line.from ?? (line.to === undefined ? '' : '0000')
}
