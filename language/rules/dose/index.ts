import type { Rule } from '../rule.ts'

export const doseRules: readonly Rule[] = []
