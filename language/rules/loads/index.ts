import type { Rule } from '../rule.ts'
import { noBest } from './no-best.ts'

export const loadsRules: readonly Rule[] = [noBest]
