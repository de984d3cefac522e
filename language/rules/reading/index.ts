import type { Rule } from '../rule.ts'
import { syntax } from './syntax.ts'

export const readingRules: readonly Rule[] = [syntax]
