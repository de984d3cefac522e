import type { Rule } from '../rule.ts'
import { frequencyCap } from './frequency-cap.ts'
import { tooClose } from './too-close.ts'

export const doseRules: readonly Rule[] = [frequencyCap, tooClose]
