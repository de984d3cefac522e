import type { Gate, GateLoad } from '../../model/definitions.ts'
import type { Exact, Mass } from '../../model/quantities.ts'
import { decimal } from '../exact.ts'
import { massText } from '../mass.ts'

/** `1.5 x bodyweight`, not a mass. */
export function isMultiple(load: GateLoad): load is { readonly bodyweights: Exact } {
	return 'bodyweights' in load
}

/** "10 kg", "1.5 x bodyweight": as it is written. */
export function gateLoadText(load: GateLoad): string {
	return isMultiple(load) ? `${decimal(load.bodyweights)} x bodyweight` : massText(load)
}

/** The load that a gate asks for, if any. */
export function loadOfGate(gate: Gate): GateLoad | undefined {
	return gate.kind === 'sign-off' ? undefined : gate.kind === 'hold' ? gate.with : gate.at
}

/** What a multiple of the bodyweight comes to for somebody, in the unit of the bodyweight; `undefined` for all else. */
export function massOfMultiple(load: GateLoad | undefined, bodyweight: Mass | undefined): Mass | undefined {
	if (load === undefined || !isMultiple(load) || bodyweight === undefined) return undefined
	return { amount: bodyweight.amount.mul(load.bodyweights), unit: bodyweight.unit }
}
