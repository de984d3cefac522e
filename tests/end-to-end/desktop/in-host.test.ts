// The same suite inside VS Code for the desktop; only the launcher differs. VSCODE=/path/to/code names one that is installed; without it
// the newest is fetched.
import path from 'node:path'
import { runTests } from '@vscode/test-electron'
import { describe } from 'vitest'
import { exampleClub } from '../example-club.ts'
import { bundleSuite, reportAsTests } from '../in-host/results.ts'
import { temporaryFolder } from '../workbench/temporary-folder.ts'

describe('in the extension host of VS Code', async () => {
	await using folder = await temporaryFolder()
	const club = await exampleClub(folder.path)
	const results = path.join(folder.path, 'results.json')
	const installed = process.env.VSCODE
	await runTests({
		extensionDevelopmentPath: path.resolve(import.meta.dirname, '../../..'),
		extensionTestsPath: await bundleSuite(folder.path),
		extensionTestsEnv: { BARSTAVE_RESULTS: results },
		launchArgs: [club, '--disable-extensions', '--disable-workspace-trust', '--user-data-dir', path.join(folder.path, 'profile')],
		...(installed ? { vscodeExecutablePath: installed } : {}),
	})
	await reportAsTests(results)
})
