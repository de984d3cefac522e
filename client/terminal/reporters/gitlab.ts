import type { ShownLevel } from '../../../language/model/problem.ts'
import { identities } from '../checking/identity.ts'
import type { Reporter } from './reporter.ts'

const severityOf: Record<ShownLevel, string> = { error: 'critical', warning: 'major', info: 'minor', hint: 'info' }

/** GitLab's report of code quality: a list of findings, each with a print that stays the same while lines come and go. */
export const gitlab: Reporter = (result, setting) => {
	const prints = identities(result.problems)
	const findings = result.problems.map(({ file, line, endLine, code, level, message }, index) => ({
		description: message,
		check_name: code,
		fingerprint: prints[index],
		severity: severityOf[level],
		location: { path: setting.shownPath(file), lines: { begin: line, end: endLine } },
	}))
	return JSON.stringify(findings, null, 2)
}
