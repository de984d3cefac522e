import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { root } from './root.mjs'

/**
 * The licences of the packages whose code is in the bundles, as their authors ask: one text.
 * @param {import('esbuild').Metafile[]} bundles what esbuild has put together
 */
export function licencesOf(bundles) {
	const folders = new Set()
	for (const bundle of bundles)
		for (const file of Object.keys(bundle.inputs)) {
			const folder = /^.*node_modules\/(@[^/]+\/)?[^/]+/.exec(file)?.[0]
			if (folder) folders.add(path.join(root, folder))
		}
	// One package may lie in several folders.
	return [...new Set([...folders].sort().map(licenceOf))].join('\n\n')
}

function licenceOf(folder) {
	const { name, version, license } = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8'))
	const texts = readdirSync(folder, { withFileTypes: true })
		.filter(entry => entry.isFile() && /^(licen[cs]e|notice|copying)/i.test(entry.name))
		.map(entry => readFileSync(path.join(folder, entry.name), 'utf8').trim())
	return [`${'='.repeat(80)}\n${name} ${version} (${license})`, ...texts].join('\n\n')
}
