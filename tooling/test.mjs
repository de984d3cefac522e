// npm test: all checks, in the order in which one needs what another has made. What failed is told again at the end, where it is found even
// when only the end of the output is kept. The last line counts the tests; a check that fails before any test could run counts as one.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { installBrowser } from './needs/browser.mjs'
import { installHost, installWebHost } from './needs/host.mjs'
import { tool } from './needs/tool.mjs'
import { script } from './script.mjs'

/** So many characters are told of why a test failed; the whole of it stands where the test ran. */
const longestReason = 3000

await script(async () => {
	process.env.CHROMIUM = installBrowser()
	installHost()
	installWebHost()

	let passed = 0
	const failures = []

	const check = async (title, name, ...words) => {
		console.log(`\n── ${title}: ${[name, ...words].join(' ')}`)
		const status = await tool(name, ...words)
		if (status !== 0) failures.push(`${title}: ended with ${status}`)
		return status === 0
	}
	const tests = async (title, ...words) => {
		console.log(`\n── ${title}`)
		const folder = mkdtempSync(path.join(tmpdir(), 'barstave-results-'))
		const results = path.join(folder, 'results.json')
		const status = await tool('vitest', 'run', ...words, '--reporter=default', '--reporter=json', `--outputFile.json=${results}`)
		const { passed: good, failures: bad } = read(results)
		rmSync(folder, { recursive: true })
		passed += good
		failures.push(...bad)
		// A run that broke down, or found nothing to run, is a failure too.
		if (status !== 0 && bad.length === 0) failures.push(`${title}: ended with ${status}`)
	}

	await check('style', 'biome', 'ci')
	await check('grammar', 'langium', 'generate')
	await check('types', 'tsc', '-p', '.')
	await check('layers', 'depcruise', '--config', 'tooling/layers.mjs', 'language', 'server', 'client')
	await check('nothing unused', 'knip', '--config', 'tooling/knip.jsonc')
	if (await check('build', 'node', 'tooling/build.mjs')) {
		await tests('tests')
		if (await check('package', 'node', 'tooling/package.mjs'))
			await tests('tests in a real editor', '--config', 'tests/end-to-end/vitest.config.ts')
	}

	if (failures.length > 0) console.log(`\n── what failed\n\n${failures.join('\n\n')}`)
	console.log(`\n${passed} passed, ${failures.length} failed`)
	return failures.length === 0 ? 0 : 1
})

/** The number of tests that passed, and a text for each that failed: its file, its name and what it said. */
function read(file) {
	let results
	try {
		results = JSON.parse(readFileSync(file, 'utf8'))
	} catch {
		return { passed: 0, failures: [] }
	}
	const failures = results.testResults.flatMap(({ name, status, message, assertionResults }) => {
		const told = (title, said) => `${[path.relative('.', name), title].join(' > ')}\n${said.slice(0, longestReason)}`
		const tests = assertionResults.filter(test => test.status === 'failed')
		// A file that breaks down before its tests begin has none that failed.
		if (tests.length === 0) return status === 'failed' ? [told('the whole file', message)] : []
		return tests.map(({ fullName, failureMessages }) => told(fullName, failureMessages.join('\n')))
	})
	return { passed: results.numPassedTests, failures }
}
