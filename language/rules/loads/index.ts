import type { Rule } from '../rule.ts'
import { avoidedMovement } from './avoided-movement.ts'
import { belowBar } from './below-bar.ts'
import { beyondSupply } from './beyond-supply.ts'
import { dayNotAvailable } from './day-not-available.ts'
import { dayNotGiven } from './day-not-given.ts'
import { noBest } from './no-best.ts'
import { noEquipment } from './no-equipment.ts'
import { notLoadable } from './not-loadable.ts'
import { staleBest } from './stale-best.ts'
import { uncertainEstimate } from './uncertain-estimate.ts'

export const loadsRules: readonly Rule[] = [
	noBest,
	staleBest,
	uncertainEstimate,
	notLoadable,
	belowBar,
	beyondSupply,
	noEquipment,
	avoidedMovement,
	dayNotAvailable,
	dayNotGiven,
]
