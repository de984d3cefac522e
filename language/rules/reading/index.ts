import type { Rule } from '../rule.ts'
import { badDate } from './bad-date.ts'
import { badNumber } from './bad-number.ts'
import { duplicateName } from './duplicate-name.ts'
import { mixedUnits } from './mixed-units.ts'
import { oldSpelling } from './old-spelling.ts'
import { replacesBuiltIn } from './replaces-built-in.ts'
import { statedTwice } from './stated-twice.ts'
import { syntax } from './syntax.ts'
import { unknownName } from './unknown-name.ts'
import { unusedAllow } from './unused-allow.ts'
import { unusedDefinition } from './unused-definition.ts'

export const readingRules: readonly Rule[] = [
	syntax,
	unknownName,
	duplicateName,
	statedTwice,
	badNumber,
	badDate,
	mixedUnits,
	unusedDefinition,
	unusedAllow,
	oldSpelling,
	replacesBuiltIn,
]
