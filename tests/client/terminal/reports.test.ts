import path from 'node:path'
import sarifSchema from '@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json' with { type: 'json' }
import Ajv from 'ajv-draft-04'
import stringWidth from 'string-width'
import { describe, expect, test } from 'vitest'
import { barstave } from './support/program.ts'
import { sound, withError, withWarning, workspaceOf } from './support/workspace.ts'

/** A title and a comment that each kind of report has to write in its own way. */
const awkward = withError.replace('"First steps"', '"<b>50% & \\"more\\"</b>, ::error::"')

async function report(format: string, files: Readonly<Record<string, string>>, ...words: string[]): Promise<string> {
	return (await barstave(['check', '--format', format, ...words], { cwd: await workspaceOf(files) })).out
}

describe('for people', () => {
	test('each fault stands under its line, with a mark, its code and level; the last line counts', async () => {
		const out = await report('text', {
			'b.stave': sound.replace('first-steps', 'b'),
			'a.stave': withError,
			'c.stave': withWarning.replace('first-steps', 'c'),
		})
		expect(out.split('\n')).toEqual([
			'a.stave',
			'',
			'  4:15    error  unknown-name',
			'    accessory no-such-movement 3 x 30 s',
			'              ━━━━━━━━━━━━━━━━',
			expect.stringMatching(/^ {4}No movement is called "no-such-movement"/),
			'',
			'c.stave',
			'',
			'  4:5     warning  role-not-allowed',
			'    main plank 3 x 30 s',
			'    ━━━━━━━━━━',
			...Array.from({ length: out.split('\n').length - 15 }, () => expect.stringMatching(/^ {4}\S/)),
			'',
			'3 files checked: 1 error, 1 warning.',
			'',
		])
	})

	test('says so where there is nothing to report', async () => {
		expect(await report('text', { 'a.stave': sound })).toBe('1 file checked, nothing to report.\n')
	})

	test('the mark stands under the fault by the width of what is shown', async () => {
		const out = await report('text', { 'a.stave': withError.replace('    accessory', '\t/* 深蹲 🏋️ e\u0301 */ accessory') })
		const lines = out.split('\n')
		const mark = lines.findIndex(line => line.includes('━'))
		const before = lines[mark - 1]!.split('no-such-movement')[0]!
		expect(stringWidth(lines[mark]!.split('━')[0]!)).toBe(stringWidth(before))
	})

	test('of a long line the part around the fault is shown', async () => {
		const long = withError
			.replace('    accessory', `/* ${'wide '.repeat(2000)}*/ accessory`)
			.replace('30 s', `30 s // ${'more '.repeat(2000)}`)
		const out = await report('text', { 'a.stave': long })
		for (const line of out.split('\n')) expect(stringWidth(line)).toBeLessThanOrEqual(120)
		expect(out).toContain('accessory no-such-movement')
	})

	test('what steers a terminal is shown as a mark', async () => {
		const out = await report('text', {
			'a.stave': withError.replace('    accessory', '/* \u001b[31m \u0007 \u202e */ accessory'),
		})
		expect(out).toContain('no-such-movement')
		expect(out).not.toMatch(/(?!\n)[\u202e\p{Cc}]/u)
	})

	test('a pipe gets no colours, whatever the environment wants', async () => {
		const cwd = await workspaceOf({ 'a.stave': withError })
		const ended = await barstave(['check'], { cwd, env: { FORCE_COLOR: '3', TERM: 'xterm-256color', COLORTERM: 'truecolor' } })
		expect(ended.out + ended.said).not.toContain('\u001b')
	})

	test('paths are those that open from the current folder', async () => {
		const cwd = await workspaceOf({ 'club/a.stave': withError })
		const { out } = await barstave(['check', '--workspace', 'club'], { cwd })
		expect(out).toMatch(/^club\/a\.stave\n/)
	})

	test('says how many --fix corrects', async () => {
		const out = await report('text', { 'a.stave': withError.replace('3 x 30 s', '3x30 s') })
		expect(out).toMatch(/\n1 of them can be corrected with --fix, without a change to the training\.\n$/)
	})
})

describe('SARIF', () => {
	// Formats need a library of their own, and are not what is tested.
	const validate = new Ajv({ strict: false, unicodeRegExp: false, validateFormats: false }).compile(sarifSchema)

	test.each([
		['nothing', { 'a.stave': sound }],
		['some', { 'a b/ä.stave': awkward, 'c.stave': withWarning.replace('first-steps', 'c') }],
	])('is what its published schema says, with %s to report', async (_, files) => {
		const log = JSON.parse(await report('sarif', files))
		expect(validate(log), JSON.stringify(validate.errors, null, 2)).toBe(true)
	})

	test('has each problem with its rule, its place and a print', async () => {
		const log = JSON.parse(await report('sarif', { 'a b/ä.stave': awkward, 'c.stave': withWarning.replace('first-steps', 'c') }))
		const [run] = log.runs
		expect(run.columnKind).toBe('utf16CodeUnits')
		const [first, second] = run.results
		expect(first).toMatchObject({ ruleId: 'unknown-name', level: 'error' })
		expect(first.locations[0].physicalLocation).toEqual({
			artifactLocation: { uri: 'a%20b/%C3%A4.stave' },
			region: { startLine: 4, startColumn: 15, endLine: 4, endColumn: 31 },
		})
		expect(second).toMatchObject({ ruleId: 'role-not-allowed', level: 'warning' })
		expect(second.relatedLocations[0].physicalLocation.artifactLocation.uri).toMatch(/^barstave-library:/)
		for (const { ruleId, ruleIndex } of run.results) expect(run.tool.driver.rules[ruleIndex].id).toBe(ruleId)
		expect(first.partialFingerprints['barstave/v1']).toMatch(/^[0-9a-f]{64}$/)
	})

	test('names no address of this machine', async () => {
		const cwd = await workspaceOf({ 'a.stave': withError })
		const { out } = await barstave(['check', '--format', 'sarif'], { cwd })
		expect(out).not.toContain(path.basename(cwd))
	})
})

test('GitHub: a workflow command for each problem, with its marks escaped', async () => {
	const out = await report('github', {
		'a,b:c.stave': awkward.replace('no-such-movement', 'no-such'),
		'c.stave': withWarning.replace('first-steps', 'c'),
	})
	const [first, second, ...rest] = out.trimEnd().split('\n')
	expect(first).toMatch(
		/^::error file=a%2Cb%3Ac\.stave,line=4,endLine=4,col=15,endColumn=22,title=unknown-name::No movement is called "no-such"/,
	)
	expect(second).toMatch(/^::warning file=c\.stave,line=4,endLine=4,col=5,endColumn=15,title=role-not-allowed::/)
	expect(rest).toEqual([])
})

test('GitLab: a finding for each problem; its print stays the same while lines come and go', async () => {
	const [finding, ...rest] = JSON.parse(await report('gitlab', { 'a.stave': withError }))
	expect(rest).toEqual([])
	expect(finding).toEqual({
		description: expect.stringContaining('no-such-movement'),
		check_name: 'unknown-name',
		fingerprint: expect.stringMatching(/^[0-9a-f]{64}$/),
		severity: 'critical',
		location: { path: 'a.stave', lines: { begin: 4, end: 4 } },
	})
	const twice = `// moved\n\n${withError}    accessory no-such-movement 2 x 30 s\n`
	const later = JSON.parse(await report('gitlab', { 'a.stave': twice }))
	expect(later[0]).toMatchObject({ fingerprint: finding.fingerprint, location: { lines: { begin: 6 } } })
	expect(later[1].fingerprint).not.toBe(finding.fingerprint)
	expect(JSON.parse(await report('gitlab', { 'a.stave': sound }))).toEqual([])
})

test('JUnit: a suite a file, a failure for what fails the check', async () => {
	const files = {
		'a.stave': awkward,
		'b.stave': sound.replace('first-steps', 'b'),
		'c.stave': withWarning.replace('first-steps', 'c'),
	}
	const out = await report('junit', files)
	expect(out.split('\n')[0]).toBe('<?xml version="1.0" encoding="UTF-8"?>')
	expect(out).toContain('<testsuites name="barstave" tests="3" failures="1" errors="0" skipped="0" time="0">')
	expect(out).toMatch(
		/<testsuite name="a\.stave" tests="1" failures="1" .*>\n\s+<testcase name="unknown-name at 4:15" classname="a\.stave" time="0">\n\s+<failure type="unknown-name" message="No movement is called &quot;no-such-movement&quot;/,
	)
	expect(out).toContain('<testcase name="no problems" classname="b.stave" time="0"/>')
	expect(out).toMatch(/<testsuite name="c\.stave" tests="1" failures="0" .*>\n.*\n\s+<system-out>warning: /)
	expect(await report('junit', files, '--fail-on', 'warning')).toContain('tests="3" failures="2"')
})

test('JUnit: what XML cannot hold is left out', async () => {
	const out = await report('junit', { 'a.stave': 'block \u0001<&> "x"\n' })
	expect(out).not.toMatch(/(?!\n)\p{Cc}/u)
	expect(out.match(/<(?!\/?(testsuites|testsuite|testcase|failure|system-out)\b|\?xml)/g)).toBeNull()
})
