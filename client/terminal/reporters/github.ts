import type { ShownLevel } from '../../../language/model/problem.ts'
import type { ShownProblem } from '../checking/check-result.ts'
import type { Reporter, ReportSetting } from './reporter.ts'

const commandOf: Record<ShownLevel, string> = { error: 'error', warning: 'warning', info: 'notice', hint: 'notice' }

/** Workflow commands of GitHub: each problem becomes a note at its line of a pull request. */
export const github: Reporter = (result, setting) => result.problems.map(problem => command(problem, setting)).join('\n')

function command(problem: ShownProblem, setting: ReportSetting): string {
	const places = { file: setting.shownPath(problem.file), line: problem.line, endLine: problem.endLine }
	// Columns are understood only within one line.
	const columns = problem.line === problem.endLine ? { col: problem.column, endColumn: problem.endColumn } : {}
	const properties = Object.entries({ ...places, ...columns, title: problem.code })
	const written = properties.map(([name, value]) => `${name}=${property(String(value))}`).join(',')
	return `::${commandOf[problem.level]} ${written}::${data(problem.message)}`
}

/** What ends a command, or stands for something else in it, is written as `%` and two digits. */
function data(text: string): string {
	return text.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A')
}

function property(text: string): string {
	return data(text).replaceAll(':', '%3A').replaceAll(',', '%2C')
}
