import type { Level } from '../../../language/model/vocabulary.ts'
import { rules } from '../../../language/rules/registry.ts'
import type { Rule } from '../../../language/rules/rule.ts'
import { libraryScheme } from '../../../language/workspace/library.ts'
import { version } from '../../../package.json'
import type { RelatedPlace, ShownProblem } from '../checking/check-result.ts'
import { identities } from '../checking/identity.ts'
import type { Reporter, ReportSetting } from './reporter.ts'

const levelOf: Record<Level, string> = { error: 'error', warning: 'warning', info: 'note', hint: 'note', off: 'none' }

/** SARIF 2.1.0 (OASIS): what services that show findings of checks read. */
export const sarif: Reporter = (result, setting) => {
	const prints = identities(result.problems)
	const log = {
		$schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json',
		version: '2.1.0',
		runs: [
			{
				tool: { driver: { name: 'Barstave', version, rules: rules.map(descriptor) } },
				columnKind: 'utf16CodeUnits',
				results: result.problems.map((problem, index) => finding(problem, prints[index]!, setting)),
			},
		],
	}
	return JSON.stringify(log, null, 2)
}

function descriptor(rule: Rule) {
	return {
		id: rule.code,
		shortDescription: { text: rule.summary },
		help: { text: rule.page, markdown: rule.page },
		defaultConfiguration: { enabled: rule.level !== 'off', level: levelOf[rule.level] },
		properties: { area: rule.area, source: rule.source, since: rule.since },
	}
}

function finding(problem: ShownProblem, print: string, setting: ReportSetting) {
	const ruleIndex = rules.findIndex(rule => rule.code === problem.code)
	const { line, column, endLine, endColumn } = problem
	const region = { startLine: line, startColumn: column, endLine, endColumn }
	return {
		ruleId: problem.code,
		...(ruleIndex < 0 ? {} : { ruleIndex }),
		level: levelOf[problem.level],
		message: { text: problem.message },
		locations: [location(problem.file, region, setting)],
		...(problem.related.length === 0 ? {} : { relatedLocations: problem.related.map(place => related(place, setting)) }),
		partialFingerprints: { 'barstave/v1': print },
	}
}

function related({ file, line, column, message }: RelatedPlace, setting: ReportSetting) {
	return { ...location(file, { startLine: line, startColumn: column }, setting), message: { text: message } }
}

function location(file: string, region: Readonly<Record<string, number>>, setting: ReportSetting) {
	const uri = file.startsWith(`${libraryScheme}:`) ? file : setting.shownPath(file).split('/').map(encodeURIComponent).join('/')
	return { physicalLocation: { artifactLocation: { uri }, region } }
}
