import type { Rule } from '../rule.ts'

export const shapeRules: readonly Rule[] = []
