import { readdir, rename, rm, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { afterEach, expect, it } from 'vitest'
import { commit, git } from '../client/terminal/support/git.ts'
import { Editor, makeFolder, uriOf, writeIn } from './support/editor.ts'

const count = 1000
const touched = 200

const nameOf = (number: number) => `blocks/b${number}.stave`
const block = (number: number, movement = 'deadlift') =>
	`block b${number} "Block ${number}"\n  weeks 1\n  session pull on monday\n    main ${movement} 3 x 5 at 100 kg\n`
const plans = `lifter ann "Ann"\nplan p for ann\n  start 2026-10-05\n  run b1\nplan q for ann\n  start 2027-01-04\n  run b${touched + 1}\n`

const editors: Editor[] = []
afterEach(async () => {
	for (const editor of editors.splice(0)) await editor.stop()
})

async function start(folder: string): Promise<Editor> {
	const editor = await Editor.start([folder])
	editors.push(editor)
	await editor.settled()
	return editor
}

/** All problems and names that a server knows. */
async function known(editor: Editor, folder: string) {
	const names = (await readdir(folder, { recursive: true })).filter(name => name.endsWith('.stave')).sort()
	await editor.settled()
	const symbols = await editor.request<{ name: string; location: { uri: string } }[]>('workspace/symbol', { query: 'lock 19' })
	return {
		problems: names.map(name => ({
			name,
			found: editor.problemsOf(uriOf(folder, name)).map(one => [one.code, one.range.start.line, one.message]),
		})),
		symbols: symbols.map(one => [one.name, one.location.uri]).sort(),
	}
}

it(`a checkout of ${touched} in ${count} files, a stash and a save by rename leave what a fresh server knows`, async () => {
	const files = Object.fromEntries(Array.from({ length: count }, (_, number) => [nameOf(number), block(number)]))
	const folder = await makeFolder({ ...files, 'plans.stave': plans })
	await git(folder, 'init', '-q', '-b', 'main')
	await commit(folder)
	await git(folder, 'checkout', '-q', '-b', 'other')
	// Some get a fault, some another name, some go, some are new.
	for (let number = 0; number < touched; number++) {
		if (number % 4 === 0) await writeIn(folder, nameOf(number), block(number, 'dedlift'))
		if (number % 4 === 1) await writeIn(folder, nameOf(number), block(number + 5000))
		if (number % 4 === 2) await rm(path.join(folder, nameOf(number)))
		if (number % 4 === 3) await writeIn(folder, `new/n${number}.stave`, block(number + 9000, 'bakc-squat'))
	}
	await commit(folder)
	await git(folder, 'checkout', '-q', 'main')

	const editor = await start(folder)
	expect((await known(editor, folder)).problems.some(({ found }) => found.some(([code]) => code === 'unknown-name'))).toBe(false)
	const changes = Array.from({ length: touched }, (_, number) => {
		const type = number % 4 === 2 ? 3 : number % 4 === 3 ? 1 : 2
		return { uri: uriOf(folder, type === 1 ? `new/n${number}.stave` : nameOf(number)), type } as const
	})
	const back = changes.map(({ uri, type }) => ({ uri, type: type === 1 ? 3 : type === 3 ? 1 : 2 }) as const)
	const compare = async () => {
		const fresh = await start(folder)
		expect(await known(editor, folder)).toEqual(await known(fresh, folder))
		editors.splice(editors.indexOf(fresh), 1)
		await fresh.stop()
	}

	await git(folder, 'checkout', '-q', 'other')
	await editor.filesChanged(changes)
	await compare()
	// The plan misses its block, which has another name on that branch.
	expect(editor.codesOf(uriOf(folder, 'plans.stave'))).toContain('unknown-name')
	await git(folder, 'checkout', '-q', 'main')
	await editor.filesChanged(back)
	await compare()
	expect(editor.codesOf(uriOf(folder, 'plans.stave'))).not.toContain('unknown-name')

	await writeIn(folder, nameOf(1), block(1, 'dedlift'))
	await writeIn(folder, nameOf(2), block(7002))
	const stashed = [1, 2].map(number => ({ uri: uriOf(folder, nameOf(number)), type: 2 as const }))
	await editor.filesChanged(stashed)
	await compare()
	await git(folder, 'stash', '-q')
	await editor.filesChanged(stashed)
	await compare()

	await writeFile(path.join(folder, 'blocks/b3.stave.tmp'), block(3, 'dedlift'))
	await rename(path.join(folder, 'blocks/b3.stave.tmp'), path.join(folder, nameOf(3)))
	await editor.filesChanged([{ uri: uriOf(folder, nameOf(3)), type: 1 }])
	await compare()
	expect(editor.codesOf(uriOf(folder, nameOf(3)))).toContain('unknown-name')
}, 300_000)
