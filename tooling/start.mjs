// npm start [-- FOLDER]: what Barstave makes of the example club, or of another folder with .stave files.
import { existsSync } from 'node:fs'
import path from 'node:path'
import { Hindrance } from './needs/hindrance.mjs'
import { plansIn } from './needs/plans.mjs'
import { root } from './needs/root.mjs'
import { tool } from './needs/tool.mjs'
import { script } from './script.mjs'

await script(async ([given]) => {
	// npm goes to the root; a path is meant from where the person stands.
	const folder = given === undefined ? path.join(root, 'examples/club') : path.resolve(process.env.INIT_CWD ?? '.', given)
	if (!existsSync(folder)) throw new Hindrance(`There is no folder ${folder}.`)
	if ((await tool('node', 'tooling/build.mjs')) !== 0) return 1

	const barstave = async (...words) => {
		console.log(`\n── barstave ${words.join(' ')}\n`)
		const status = await tool('node', 'dist/barstave.cjs', ...words, '--workspace', folder)
		// Status 1 tells of problems in the texts, which are there to be shown.
		if (status > 1) throw new Hindrance('Barstave could not do that; the line above says why.')
	}

	console.log(`\nBarstave reads ${folder}.`)
	await barstave('check')
	const [plan] = await plansIn(folder)
	if (!plan) {
		console.log('\nNo plan stands there, so there are no loads to show. A plan puts blocks on the calendar of a lifter.')
		return 0
	}
	const page = path.join(root, 'dist', 'preview.html')
	await barstave('sheet', plan, '--week', '1')
	await barstave('volume', plan)
	await barstave('sheet', plan, '--format', 'html', '--out', page)
	if (!existsSync(page)) throw new Hindrance('The page was not written.')
	console.log(`The whole plan, with its charts, is a page for the browser now: ${page}`)
	return 0
})
