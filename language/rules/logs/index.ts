import type { Rule } from '../rule.ts'
import { brokeAgain } from './broke-again.ts'
import { effortDrift } from './effort-drift.ts'
import { gateEarned } from './gate-earned.ts'
import { missedWork } from './missed-work.ts'
import { newBest } from './new-best.ts'
import { notInPlan } from './not-in-plan.ts'

export const logsRules: readonly Rule[] = [notInPlan, missedWork, newBest, gateEarned, effortDrift, brokeAgain]
