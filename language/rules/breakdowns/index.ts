import type { Rule } from '../rule.ts'

export const breakdownsRules: readonly Rule[] = []
