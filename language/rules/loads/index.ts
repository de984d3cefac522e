import type { Rule } from '../rule.ts'

export const loadsRules: readonly Rule[] = []
