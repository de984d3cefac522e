import { readdirSync } from 'node:fs'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { expect, test } from 'vitest'
import { root } from '../../support/build-program.ts'
import { builtProgram } from './support/program.ts'

test('npm start finds the plans of the example club, to show the first of them', async () => {
	// A plain script that runs where nothing is installed: it has no types.
	const { plansIn } = await import(pathToFileURL(path.join(root, 'tooling/needs/plans.mjs')).href)
	const folder = path.join(root, 'examples/club')
	const names = readdirSync(path.join(folder, 'plans')).map(file => path.basename(file, '.stave'))
	expect(await plansIn(folder, await builtProgram())).toEqual(names.sort())
})
