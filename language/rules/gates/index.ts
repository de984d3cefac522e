import type { Rule } from '../rule.ts'
import { gateNotPassed } from './gate-not-passed.ts'
import { gateOrder } from './gate-order.ts'
import { gateStale } from './gate-stale.ts'
import { gateToEarn } from './gate-to-earn.ts'
import { stepSkipped } from './step-skipped.ts'

export const gatesRules: readonly Rule[] = [gateNotPassed, gateToEarn, gateStale, gateOrder, stepSkipped]
