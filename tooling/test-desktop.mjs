// npm run test:desktop: the suite inside the extension host, in VS Code for the desktop. VSCODE=/path/to/code names an installed one.
import { tool } from './needs/tool.mjs'
import { script } from './script.mjs'

await script(async () => {
	if ((await tool('node', 'tooling/build.mjs')) !== 0) return 1
	return tool('vitest', 'run', '--config', 'tests/end-to-end/desktop/vitest.config.ts')
})
