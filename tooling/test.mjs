// npm test: all checks, in the order in which one needs what another has made. The last line counts the tests; a check that fails before
// any test could run counts as one.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { installBrowser } from './needs/browser.mjs'
import { installHost, installWebHost } from './needs/host.mjs'
import { tool } from './needs/tool.mjs'
import { script } from './script.mjs'

await script(async () => {
	process.env.CHROMIUM = installBrowser()
	installHost()
	installWebHost()

	const total = { passed: 0, failed: 0 }

	const check = async (title, name, ...words) => {
		console.log(`\n── ${title}: ${[name, ...words].join(' ')}`)
		const passed = (await tool(name, ...words)) === 0
		if (!passed) total.failed++
		return passed
	}
	const tests = async (title, ...words) => {
		console.log(`\n── ${title}`)
		const folder = mkdtempSync(path.join(tmpdir(), 'barstave-results-'))
		const results = path.join(folder, 'results.json')
		const status = await tool('vitest', 'run', ...words, '--reporter=default', '--reporter=json', `--outputFile.json=${results}`)
		count(readResults(results), status)
		rmSync(folder, { recursive: true })
	}
	const count = (results, status) => {
		const failedBefore = total.failed
		total.passed += results?.numPassedTests ?? 0
		for (const file of results?.testResults ?? []) {
			const failed = file.assertionResults.filter(({ status }) => status === 'failed').length
			total.failed += file.status === 'failed' ? Math.max(failed, 1) : failed
		}
		// A run that broke down, or found nothing to run, is a failure too.
		if (status !== 0 && total.failed === failedBefore) total.failed++
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

	console.log(`\n${total.passed} passed, ${total.failed} failed`)
	return total.failed === 0 ? 0 : 1
})

function readResults(file) {
	try {
		return JSON.parse(readFileSync(file, 'utf8'))
	} catch {
		return undefined
	}
}
