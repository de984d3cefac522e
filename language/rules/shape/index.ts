import type { Rule } from '../rule.ts'
import { roleNotAllowed } from './role-not-allowed.ts'

export const shapeRules: readonly Rule[] = [roleNotAllowed]
