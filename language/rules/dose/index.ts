import type { Rule } from '../rule.ts'
import { frequencyCap } from './frequency-cap.ts'

export const doseRules: readonly Rule[] = [frequencyCap]
