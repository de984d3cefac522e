// Runs inside the extension host of an editor, which calls `run` and ends when it has settled. The launchers outside read the results.
import { writeFile } from 'node:fs/promises'
import { cases, tidy } from './cases.ts'
import type { Result } from './results.ts'

export async function run(): Promise<void> {
	const results: Result[] = []
	for (const [name, check] of Object.entries(cases)) {
		try {
			await check()
			results.push({ name, fault: undefined })
		} catch (problem) {
			results.push({ name, fault: problem instanceof Error ? (problem.stack ?? problem.message) : String(problem) })
		} finally {
			await tidy()
		}
	}
	await writeFile(process.env.BARSTAVE_RESULTS!, JSON.stringify(results))
}
