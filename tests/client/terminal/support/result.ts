import { readFileSync } from 'node:fs'
import path from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { expect } from 'vitest'
import type { CheckResult } from '../../../../client/terminal/checking/check-result.ts'
import { root } from './program.ts'

/**
 * Reads a printed result, and tests that it is what its published schema says: nothing is missing, nothing else is there.
 */
export function resultBySchema<T = CheckResult>(name: 'check' | 'sheet' | 'volume', printed: string): T {
	const schema = JSON.parse(readFileSync(path.join(root, 'client/terminal/schemas', `${name}.json`), 'utf8'))
	const result = JSON.parse(printed)
	// What the schema does not name is taken out of a copy, so that the copy differs.
	const copy = structuredClone(result)
	const validate = new Ajv2020({ allowUnionTypes: true, allErrors: true, removeAdditional: 'all' }).compile(schema)
	expect(validate(copy), JSON.stringify(validate.errors, null, 2)).toBe(true)
	expect(result).toEqual(copy)
	return result
}

/** Where and what: `a.stave 4:15 unknown-name error`. */
export function inShort({ problems }: CheckResult): string[] {
	return problems.map(({ file, line, column, code, level }) => `${file} ${line}:${column} ${code} ${level}`)
}
