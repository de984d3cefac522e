// npm run screenshots [-- FOLDER]: takes the pictures of the docs anew, from a real editor; with a folder, others to look at.
import { installBrowser } from './needs/browser.mjs'
import { installHost } from './needs/host.mjs'
import { tool } from './needs/tool.mjs'
import { script } from './script.mjs'

await script(async words => {
	process.env.CHROMIUM = installBrowser()
	installHost()
	if ((await tool('node', 'tooling/package.mjs')) !== 0) return 1
	return tool('node', 'tests/end-to-end/screenshots.ts', ...words)
})
