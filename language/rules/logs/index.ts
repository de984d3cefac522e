import type { Rule } from '../rule.ts'

export const logsRules: readonly Rule[] = []
