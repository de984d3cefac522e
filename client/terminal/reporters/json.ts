import type { Reporter } from './reporter.ts'

/** The result as it is; `schemas/check.json` describes it. */
export const json: Reporter = result => JSON.stringify(result, null, 2)
