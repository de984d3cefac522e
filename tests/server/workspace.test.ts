import { expect, it } from 'vitest'
import type { Files } from '../../server/files.ts'
import { Workspace } from '../../server/workspace.ts'

const folder = 'file:///club'
const file = `${folder}/a.stave`

/** A disk that answers when it is told to, in whatever order. */
class SlowDisk implements Files {
	private readonly waiting: (() => void)[] = []
	text = ''

	async list(): Promise<string[]> {
		return [file]
	}

	read(): Promise<string> {
		const { text } = this
		return new Promise(resolve => this.waiting.push(() => resolve(text)))
	}

	/** Fulfilled when so many questions wait. */
	async asked(count: number): Promise<void> {
		while (this.waiting.length < count) await new Promise(resolve => setTimeout(resolve))
	}

	/** Answers one of the questions that wait, 0 the oldest. */
	async answer(index: number): Promise<void> {
		await this.asked(index + 1)
		this.waiting.splice(index, 1)[0]!()
		await new Promise(resolve => setTimeout(resolve))
	}
}

it.each([
	[0, 0],
	[1, 0],
])('of two readings of a file the one that began last counts, whichever ends first (%i, %i)', async (...order) => {
	const disk = new SlowDisk()
	const workspace = new Workspace(disk)
	void workspace.addFolder(folder)
	await disk.answer(0)
	disk.text = 'team one "One"\n'
	void workspace.filesChanged([file])
	await disk.asked(1)
	disk.text = 'team two "Two"\n'
	void workspace.filesChanged([file])
	await disk.asked(2)
	for (const index of order) await disk.answer(index)
	await workspace.idle()
	expect(workspace.fileOf(file)?.text).toBe(disk.text)
})

it.each([
	[0, 0],
	[1, 0],
])('a file that changes while its folder is read for the first time is as it is now (%i, %i)', async (...order) => {
	const disk = new SlowDisk()
	const workspace = new Workspace(disk)
	disk.text = 'team one "One"\n'
	void workspace.addFolder(folder)
	await disk.asked(1)
	disk.text = 'team two "Two"\n'
	void workspace.filesChanged([file])
	await disk.asked(2)
	for (const index of order) await disk.answer(index)
	await workspace.idle()
	expect(workspace.fileOf(file)?.text).toBe(disk.text)
})

it('in a folder below a hidden one nothing is hidden but what is in it', async () => {
	const hidden = 'file:///home/.clubs/north'
	const disk: Files = { list: async () => [`${hidden}/deep/a.stave`], read: async () => 'team one "One"\n' }
	const workspace = new Workspace(disk)
	await workspace.addFolder(hidden)
	expect(workspace.fileOf(`${hidden}/deep/a.stave`)).toBeDefined()
	disk.list = async () => []
	disk.read = async () => undefined
	await workspace.filesChanged([`${hidden}/deep`])
	expect(workspace.fileOf(`${hidden}/deep/a.stave`)).toBeUndefined()
	disk.read = async () => 'team one "One"\n'
	await workspace.filesChanged([`${hidden}/.git/b.stave`, `${hidden}/node_modules/c.stave`, `${hidden}/d.stave`])
	expect(workspace.folderOf(`${hidden}/d.stave`).fileUris()).toEqual([`${hidden}/d.stave`])
})
