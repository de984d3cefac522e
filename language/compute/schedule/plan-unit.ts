import type { Gym, Lifter } from '../../model/definitions.ts'
import type { Unit } from '../../model/quantities.ts'

/** The unit of a gym's barbell, else of its first bar; `undefined` where it has none. */
export function gymUnit(gym: Gym | undefined): Unit | undefined {
	const barbell = gym?.bars.find(bar => bar.name.text === 'barbell') ?? gym?.bars[0]
	return barbell?.mass.unit
}

/** The unit that a plan's loads are in: the gym's barbell's, else that of the lifter's bests, else kilograms. */
export function planUnit(gym: Gym | undefined, lifter: Lifter | undefined): Unit {
	return gymUnit(gym) ?? lifter?.bests[0]?.mass.unit ?? 'kg'
}
