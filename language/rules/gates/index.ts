import type { Rule } from '../rule.ts'

export const gatesRules: readonly Rule[] = []
