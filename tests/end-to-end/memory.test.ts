// A coach types for hours with the preview open.
import { readFile } from 'node:fs/promises'
import path from 'node:path'
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest'
import { type Host, hosts } from './workbench/hosts.ts'
import { memoryOfPage, memoryOfProcess } from './workbench/memory.ts'
import { languageServersBelow } from './workbench/processes.ts'
import { placeOf } from './workbench/workbench.ts'

/** A key and the one that takes it back. */
const pairs = 1000
/** Growth that may be, in MB for 100 keys. */
const most = 1

describe.each(Object.entries(hosts))('%s', (name, open) => {
	let host: Host
	let block = ''

	beforeAll(async () => {
		host = await open({
			async prepare(club) {
				block = await readFile(path.join(club, 'blocks/hinge-rebuild.stave'), 'utf8')
			},
		})
	})

	afterEach(async ({ task }) => {
		if (task.result?.state === 'fail') await host.bench.screenshot(`failed: ${name}: ${task.name}`)
	})

	afterAll(() => host?.[Symbol.asyncDispose]())

	test('2,000 keys with the preview open leave little behind', { timeout: 400_000 }, async () => {
		const { bench } = host
		await bench.openFile('blocks/hinge-rebuild.stave')
		await bench.run('Barstave: Open preview beside the text')
		await expect.poll(() => bench.loadInPreview('Deadlift')).toBe('112.5 kg')
		await bench.goTo(placeOf(block, '0%', 'week 1'))
		const type = async (count: number) => {
			for (let pair = 0; pair < count; pair++) {
				await bench.page.keyboard.press('1')
				await bench.page.keyboard.press('Backspace')
			}
			await expect.poll(() => bench.loadInPreview('Deadlift')).toBe('112.5 kg')
		}
		// What is only made once is there then.
		await type(100)
		const before = await memories(host)
		await type(pairs)
		const after = await memories(host)
		for (const [part, megabytes] of Object.entries(after))
			expect((megabytes - before[part]!) / ((2 * pairs) / 100), part).toBeLessThan(most)
	})
})

/** In MB: the page with its workers' owners, and where it is a process, the server. */
async function memories({ bench, server }: Host): Promise<Record<string, number>> {
	const page = await memoryOfPage(bench.page)
	if (!server) return { page }
	const [pid] = await languageServersBelow(server.pid)
	return { page, server: await memoryOfProcess(pid!) }
}
