import { mkdir, rename, rm, writeFile } from 'node:fs/promises'
import path from 'node:path'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { Editor, makeFolder, uriOf } from './support/editor.ts'

/**
 * What people and programs do to a workspace, in any order: keys, closing without saving, saving, a checkout, renames and deletes outside of the
 * editor, folders that come and go. Afterwards the server knows what one knows that is started now.
 */

const block = (name: string, movement = 'deadlift') =>
	`block ${name} "Block"\n  weeks 2\n  session pull on monday\n    main ${movement} 3 x 5 at 70%\n`
const variants = [
	'',
	block('steps'),
	block('steps', 'mine'),
	block('other', 'dedlift'),
	'movement mine "Mine"\n  pattern hinge\n  equipment barbell\n',
	'lifter ann "Ann"\n  best deadlift 100 kg on 2026-09-01\n  trains at hall\n',
	'plan p for ann\n  start 2026-10-05\n  run steps\n',
	'plan q for band\n  start 2026-10-05\n  run other\nteam band "Band"\n  members ann, bo\n',
	'gym hall "Hall"\n  bar barbell 20 kg\n  plates 20 kg x 2\n',
	'rules house\n  unused-definition warning\nlifter bo "Bo"\n',
	'lifter ann "Another"\n@@@ plan',
]
// Few, so that much is done to each.
const names = ['a.stave', 'deep/b.stave']

const file = fc.record({ folder: fc.nat(2), name: fc.constantFrom(...names) })
const text = fc.constantFrom(...variants)
const deed = fc.oneof(
	{ weight: 3, arbitrary: fc.record({ kind: fc.constant('open' as const), file, text }) },
	{ weight: 4, arbitrary: fc.record({ kind: fc.constant('type' as const), file, text }) },
	{ weight: 3, arbitrary: fc.record({ kind: fc.constant('close' as const), file }) },
	{ weight: 2, arbitrary: fc.record({ kind: fc.constant('save' as const), file }) },
	{ weight: 4, arbitrary: fc.record({ kind: fc.constant('write' as const), file, text }) },
	{ weight: 2, arbitrary: fc.record({ kind: fc.constant('delete' as const), file }) },
	{ weight: 2, arbitrary: fc.record({ kind: fc.constant('rename' as const), file, to: fc.constantFrom(...names) }) },
	{ weight: 1, arbitrary: fc.record({ kind: fc.constant('delete folder' as const), file }) },
	{ weight: 1, arbitrary: fc.record({ kind: fc.constant('folder comes or goes' as const) }) },
)
type Deed = typeof deed extends fc.Arbitrary<infer T> ? T : never

/** An editor, a disk, and what they have: two folders of the editor, the second of which comes and goes, and one outside. */
class Desk {
	readonly disk = new Map<string, string>()
	readonly open = new Map<string, string>()
	private hasSecond = true

	private constructor(
		readonly editor: Editor,
		private readonly folders: readonly string[],
	) {}

	static async make(): Promise<Desk> {
		const folders = await Promise.all([makeFolder({}), makeFolder({}), makeFolder({})])
		return new Desk(await Editor.start(folders.slice(0, 2), {}, '2026-10-07'), folders)
	}

	get ofEditor(): readonly string[] {
		return this.folders.slice(0, this.hasSecond ? 2 : 1)
	}

	async does(deed: Deed): Promise<void> {
		if (deed.kind === 'folder comes or goes') {
			const second = { uri: uriOf(this.folders[1]!), name: 'second' }
			this.hasSecond = !this.hasSecond
			const event = { added: this.hasSecond ? [second] : [], removed: this.hasSecond ? [] : [second] }
			return this.editor.connection.sendNotification('workspace/didChangeWorkspaceFolders', { event })
		}
		const folder = this.folders[deed.file.folder]!
		const where = path.join(folder, deed.file.name)
		const uri = uriOf(folder, deed.file.name)
		switch (deed.kind) {
			case 'open':
				if (this.open.has(where)) return
				this.open.set(where, this.disk.get(where) ?? deed.text)
				return this.editor.openText(uri, this.open.get(where)!)
			case 'type':
				if (!this.open.has(where)) return
				this.open.set(where, deed.text)
				await this.editor.change(uri, deed.text)
				return
			case 'close':
				if (this.open.delete(where)) await this.editor.close(uri)
				return
			case 'save':
				if (this.open.has(where)) await this.write(where, uri, this.open.get(where)!)
				return
			case 'write':
				return this.write(where, uri, deed.text)
			case 'delete':
				if (!this.disk.delete(where)) return
				await rm(where)
				return this.editor.filesChanged([{ uri, type: 3 }])
			case 'rename': {
				const to = path.join(folder, deed.to)
				if (to === where || !this.disk.has(where) || this.disk.has(to)) return
				await mkdir(path.dirname(to), { recursive: true })
				await rename(where, to)
				this.disk.set(to, this.disk.get(where)!)
				this.disk.delete(where)
				return this.editor.filesChanged([
					{ uri, type: 3 },
					{ uri: uriOf(folder, deed.to), type: 1 },
				])
			}
			case 'delete folder':
				await rm(path.join(folder, 'deep'), { recursive: true, force: true })
				for (const known of this.disk.keys()) if (known.startsWith(path.join(folder, 'deep/'))) this.disk.delete(known)
				return this.editor.filesChanged([{ uri: uriOf(folder, 'deep'), type: 3 }])
		}
	}

	private async write(where: string, uri: string, content: string): Promise<void> {
		const type = this.disk.has(where) ? 2 : 1
		this.disk.set(where, content)
		await mkdir(path.dirname(where), { recursive: true })
		await writeFile(where, content)
		await this.editor.filesChanged([{ uri, type }])
	}

	/** All problems and names that a server knows. */
	async known(of = this.editor) {
		await of.settled()
		const symbols = await of.request<{ name: string; location: { uri: string } }[]>('workspace/symbol', { query: '' })
		const uris = this.folders.flatMap(folder => names.map(name => uriOf(folder, name)))
		return {
			problems: uris.map(uri => [
				uri,
				of
					.problemsOf(uri)
					.map(one => JSON.stringify(one))
					.sort(),
			]),
			symbols: symbols.map(one => `${one.name} ${one.location.uri}`).sort(),
		}
	}

	/** What a server knows that is started now, in which the same texts are open. */
	async knownAfresh() {
		const fresh = await Editor.start(this.ofEditor, {}, '2026-10-07')
		for (const [where, content] of this.open) await fresh.openText(uriOf(where), content)
		const known = await this.known(fresh)
		await fresh.stop()
		return known
	}
}

it('whatever is done in whatever order, the server knows what a fresh one knows', async () => {
	await fc.assert(
		fc.asyncProperty(fc.array(deed, { minLength: 20, maxLength: 100, size: 'max' }), async deeds => {
			const desk = await Desk.make()
			try {
				for (const one of deeds) await desk.does(one)
				expect(await desk.known()).toEqual(await desk.knownAfresh())
			} finally {
				await desk.editor.stop()
			}
		}),
		{ numRuns: 10, endOnFailure: true },
	)
})
