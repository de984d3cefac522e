import type { Exact, Mass, Unit } from '../model/quantities.ts'
import { decimal, exact } from './exact.ts'

/** Kilograms in one pound, exactly. Source: international avoirdupois pound, agreement of 1959. */
export const kilogramsPerPound: Exact = exact('0.45359237')

/** The amount of a mass in a unit, without loss in either direction. */
export function inUnit(mass: Mass, unit: Unit): Exact {
	if (mass.unit === unit) return mass.amount
	return unit === 'kg' ? mass.amount.mul(kilogramsPerPound) : mass.amount.div(kilogramsPerPound)
}

/** "72.5 kg": the mass in the unit that it was written in. */
export function massText(mass: Mass): string {
	return `${decimal(mass.amount)} ${mass.unit}`
}
