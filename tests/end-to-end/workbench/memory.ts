import type { Page } from 'playwright-core'

interface HeapUsage {
	readonly usedSize: number
}

/** What a page keeps after everything that nobody needs any more is thrown away, in MB: the workbench, and pages within it. */
export async function memoryOfPage(page: Page): Promise<number> {
	const frames = page.frames().filter(frame => frame !== page.mainFrame())
	const targets = [page, ...frames]
	let bytes = 0
	for (const target of targets) {
		// A frame that shares the process of its page has no session of its own, and is counted with that.
		const session = await page
			.context()
			.newCDPSession(target)
			.catch(() => undefined)
		if (!session) continue
		await session.send('HeapProfiler.collectGarbage')
		const { usedSize }: HeapUsage = await session.send('Runtime.getHeapUsage')
		bytes += usedSize
		await session.detach()
	}
	return bytes / 1e6
}

/** The same of a process that runs Node. A signal makes it listen to those who look into it. */
export async function memoryOfProcess(pid: number): Promise<number> {
	process.kill(pid, 'SIGUSR1')
	const socket = new WebSocket(await inspectorOf())
	await new Promise((resolve, reject) => {
		socket.onopen = resolve
		socket.onerror = reject
	})
	const ask = (id: number, method: string) =>
		new Promise<unknown>(resolve => {
			socket.addEventListener('message', ({ data }) => {
				const answer = JSON.parse(String(data))
				if (answer.id === id) resolve(answer.result)
			})
			socket.send(JSON.stringify({ id, method }))
		})
	await ask(1, 'HeapProfiler.collectGarbage')
	const { usedSize } = (await ask(2, 'Runtime.getHeapUsage')) as HeapUsage
	socket.close()
	return usedSize / 1e6
}

/** Where Node listens unless told otherwise. */
async function inspectorOf(): Promise<string> {
	for (let attempt = 0; ; attempt++) {
		const list = await fetch('http://127.0.0.1:9229/json/list').then(
			response => response.json() as Promise<{ webSocketDebuggerUrl: string }[]>,
			() => [],
		)
		if (list[0]) return list[0].webSocketDebuggerUrl
		if (attempt === 50) throw new Error('The process does not let itself be looked into.')
		await new Promise(resolve => setTimeout(resolve, 100))
	}
}
