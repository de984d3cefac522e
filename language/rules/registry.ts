import { breakdownsRules } from './breakdowns/index.ts'
import { calendarRules } from './calendar/index.ts'
import { doseRules } from './dose/index.ts'
import { gatesRules } from './gates/index.ts'
import { loadsRules } from './loads/index.ts'
import { logsRules } from './logs/index.ts'
import { readingRules } from './reading/index.ts'
import type { Rule } from './rule.ts'
import { shapeRules } from './shape/index.ts'

/** Every rule, in the order of the areas. */
export const rules: readonly Rule[] = [
	...readingRules,
	...shapeRules,
	...doseRules,
	...breakdownsRules,
	...gatesRules,
	...loadsRules,
	...calendarRules,
	...logsRules,
]

const byCode = new Map(rules.map(rule => [rule.code, rule]))

/** The rule of a code, or `undefined` for a name that no rule has. */
export function ruleOf(code: string): Rule | undefined {
	return byCode.get(code)
}
