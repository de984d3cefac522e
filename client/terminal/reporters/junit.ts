import { type ShownProblem, shownLevels } from '../checking/check-result.ts'
import type { Reporter, ReportSetting } from './reporter.ts'

/**
 * The XML that test reports have: a suite for each file, a failed case for each problem that fails the check, and a passed one for each
 * milder problem, or for a file without any.
 */
export const junit: Reporter = (result, setting) => {
	const byFile = Map.groupBy(result.problems, problem => problem.file)
	const files = [...new Set([...setting.files, ...byFile.keys()])]
	const suites = files.map(file => suiteOf(file, byFile.get(file) ?? [], setting))
	const total = totals(suites)
	return [
		'<?xml version="1.0" encoding="UTF-8"?>',
		`<testsuites name="barstave"${total}>`,
		...suites.map(suite => suite.xml),
		'</testsuites>',
	].join('\n')
}

interface Suite {
	readonly tests: number
	readonly failures: number
	readonly xml: string
}

function suiteOf(file: string, problems: readonly ShownProblem[], setting: ReportSetting): Suite {
	const name = attribute(setting.shownPath(file))
	const cases = problems.map(problem => caseOf(name, problem, setting))
	if (cases.length === 0) cases.push(`    <testcase name="no problems" classname="${name}" time="0"/>`)
	const counts = { tests: cases.length, failures: problems.filter(problem => fails(problem, setting)).length }
	return { ...counts, xml: [`  <testsuite name="${name}"${totals([counts])}>`, ...cases, '  </testsuite>'].join('\n') }
}

function caseOf(file: string, problem: ShownProblem, setting: ReportSetting): string {
	const { code, level, message, line, column } = problem
	const start = `    <testcase name="${attribute(`${code} at ${line}:${column}`)}" classname="${file}" time="0">`
	const body = fails(problem, setting)
		? `<failure type="${attribute(code)}" message="${attribute(message)}">${content(`${level}: ${message}`)}</failure>`
		: `<system-out>${content(`${level}: ${message}`)}</system-out>`
	return `${start}\n      ${body}\n    </testcase>`
}

function fails({ level }: ShownProblem, { failOn }: ReportSetting): boolean {
	return shownLevels.indexOf(level) <= shownLevels.indexOf(failOn)
}

function totals(suites: readonly { readonly tests: number; readonly failures: number }[]): string {
	const sum = (key: 'tests' | 'failures') => suites.reduce((total, suite) => total + suite[key], 0)
	return ` tests="${sum('tests')}" failures="${sum('failures')}" errors="0" skipped="0" time="0"`
}

// What XML 1.0 cannot hold, even escaped.
const impossible = /(?![\t\n\r])[\p{Cc}\p{Cs}\ufffe\uffff]/gu

function content(text: string): string {
	return text.replace(impossible, '\ufffd').replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;')
}

function attribute(text: string): string {
	return content(text).replaceAll('"', '&quot;').replaceAll('\n', '&#10;').replaceAll('\t', '&#9;').replaceAll('\r', '&#13;')
}
