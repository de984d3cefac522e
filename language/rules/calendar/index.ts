import type { Rule } from '../rule.ts'
import { meetOutsidePlan } from './meet-outside-plan.ts'
import { noTaper } from './no-taper.ts'
import { planGap } from './plan-gap.ts'
import { plansOverlap } from './plans-overlap.ts'

export const calendarRules: readonly Rule[] = [plansOverlap, planGap, meetOutsidePlan, noTaper]
