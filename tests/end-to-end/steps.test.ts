// The same steps of a person in both kinds of workbench.
import { mkdir, readFile, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { afterAll, afterEach, beforeAll, describe, test } from 'vitest'
import { hostile } from './steps/hostile.ts'
import { type Club, steps } from './steps/steps.ts'
import { type Host, hosts } from './workbench/hosts.ts'

describe.each(Object.entries(hosts))('%s', (name, open) => {
	let host: Host
	let club: Club

	beforeAll(async () => {
		let texts = { plan: '', block: '' }
		host = await open({
			async prepare(copy) {
				const read = (file: string) => readFile(path.join(copy, file), 'utf8')
				texts = { plan: await read('plans/mara-autumn.stave'), block: await read('blocks/hinge-rebuild.stave') }
				await mkdir(path.join(copy, 'empty'))
				for (const [file, text] of Object.entries(hostile.files)) {
					await mkdir(path.join(copy, path.dirname(file)), { recursive: true })
					await writeFile(path.join(copy, file), text)
				}
			},
		})
		club = { root: host.root, ...texts }
	})

	afterEach(async ({ task }) => {
		if (task.result?.state === 'fail') await host.bench.screenshot(`failed: ${name}: ${task.name}`)
	})

	afterAll(() => host?.[Symbol.asyncDispose]())

	for (const [step, act] of Object.entries(steps)) test(step, () => act(host.bench, club))
})
