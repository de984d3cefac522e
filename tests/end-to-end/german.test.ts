// The interface in another language than English. The workbench itself stays English here: its own translations are no part of it.
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest'
import { type Host, hosts } from './workbench/hosts.ts'

describe.each(Object.entries(hosts))('in German: %s', (name, open) => {
	let host: Host

	beforeAll(async () => {
		host = await open({ language: 'de' })
	})

	afterEach(async ({ task }) => {
		if (task.result?.state === 'fail') await host.bench.screenshot(`failed: ${name}: ${task.name}`)
	})

	afterAll(() => host?.[Symbol.asyncDispose]())

	// The workbench in the browser alone looks for translated manifests only where extensions come from a gallery.
	const title = name.endsWith('alone') ? 'Barstave: Open preview beside the text' : 'Barstave: Vorschau neben dem Text öffnen'

	test('what is shown is called by its German name', async () => {
		const { bench } = host
		await bench.openFile('blocks/hinge-rebuild.stave')
		await expect.poll(() => bench.statusItem('Lasten von Mara Lind').textContent()).toContain('Mara Lind')
		await bench.run(title)
		await bench.page.locator('.tab', { hasText: 'Vorschau: Mara, to the regionals' }).waitFor()
		await bench.webview.getByRole('heading', { name: 'Wochenumfang' }).waitFor()
		await bench.webview.getByRole('columnheader', { name: 'Sätze × Wdh.' }).first().waitFor()
	})
})
