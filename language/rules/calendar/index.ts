import type { Rule } from '../rule.ts'

export const calendarRules: readonly Rule[] = []
