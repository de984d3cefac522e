import type { Rule } from '../rule.ts'
import { dayClash } from './day-clash.ts'
import { emptySession } from './empty-session.ts'
import { orderInSession } from './order-in-session.ts'
import { roleNotAllowed } from './role-not-allowed.ts'
import { sessionTooLong } from './session-too-long.ts'
import { targetUntrained } from './target-untrained.ts'
import { weekOutOfRange } from './week-out-of-range.ts'
import { weekStatedTwice } from './week-stated-twice.ts'
import { weekWithoutWork } from './week-without-work.ts'

export const shapeRules: readonly Rule[] = [
	weekOutOfRange,
	weekWithoutWork,
	weekStatedTwice,
	emptySession,
	dayClash,
	sessionTooLong,
	roleNotAllowed,
	orderInSession,
	targetUntrained,
]
