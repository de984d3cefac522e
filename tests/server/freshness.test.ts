import { mkdir, rename, rm, unlink, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { afterEach, describe, expect, it } from 'vitest'
import { Editor, makeFolder, uriOf, writeIn } from './support/editor.ts'

let editor: Editor | undefined

afterEach(async () => {
	await editor?.stop()
	editor = undefined
})

const block = (name: string) => `block ${name} "Steps"
  weeks 2
  session pull on monday
    main deadlift 3 x 5 at 100 kg
`
const plan = (runs: string) => `lifter ann "Ann"\nplan p for ann\n  start 2026-10-05\n  run ${runs}\n`

/** A folder with a plan that runs a block of another file; the plan's problems say whether the block is known. */
async function twoFiles() {
	const folder = await makeFolder({ 'block.stave': block('steps'), 'plan.stave': plan('steps') })
	editor = await Editor.start([folder])
	const planUri = await editor.open(folder, 'plan.stave')
	const blockUri = uriOf(folder, 'block.stave')
	const missing = () => editor!.codesOf(planUri).includes('unknown-name')
	// The plan must first be seen to be sound, or its being sound later would prove nothing.
	await editor.until(() => editor!.published.some(one => one.uri === planUri), 'the plan is published')
	await editor.until(() => !missing(), 'the plan is sound')
	return { folder, planUri, blockUri, missing, editor }
}

describe('an index of names stays fresh', () => {
	it('when an edit is closed without saving', async () => {
		const { folder, blockUri, missing, editor } = await twoFiles()
		await editor.open(folder, 'block.stave')
		await editor.change(blockUri, block('other'))
		await editor.until(missing, 'the unsaved rename breaks the plan')
		await editor.close(blockUri)
		await editor.until(() => !missing(), 'the file on the disk counts again')
	})

	it('when a file from outside of the folder is opened and closed', async () => {
		const { editor, planUri, missing } = await twoFiles()
		const outside = await makeFolder({ 'stray.stave': `${block('steps')}lifter ann "Another"\nzzz\n` })
		const stray = await editor.open(outside, 'stray.stave')
		await editor.until(() => editor.codesOf(stray).length > 0, 'its own faults show')
		expect(editor.codesOf(planUri)).not.toContain('duplicate-name')
		expect(missing()).toBe(false)
		await editor.close(stray)
		await editor.until(() => editor.codesOf(stray).length === 0, 'its faults are gone')
		const symbols = await editor.request<{ name: string }[]>('workspace/symbol', { query: 'another' })
		expect(symbols).toEqual([])
	})

	it('when a folder is added and removed', async () => {
		const { editor, missing } = await twoFiles()
		const second = await makeFolder({ 'b.stave': `${plan('nowhere')}` })
		const uri = uriOf(second, 'b.stave')
		const event = (added: string[], removed: string[]) =>
			editor.connection.sendNotification('workspace/didChangeWorkspaceFolders', {
				event: {
					added: added.map(folder => ({ uri: uriOf(folder), name: 'second' })),
					removed: removed.map(folder => ({ uri: uriOf(folder), name: 'second' })),
				},
			})
		await event([second], [])
		await editor.until(() => editor.codesOf(uri).includes('unknown-name'), "the new folder's faults show")
		expect(missing()).toBe(false)
		await event([], [second])
		await editor.until(() => editor.codesOf(uri).length === 0, "the folder's faults are gone with it")
	})

	it('when a file changes on the disk', async () => {
		const { folder, blockUri, missing, editor } = await twoFiles()
		await writeFile(path.join(folder, 'block.stave'), block('other'))
		await editor.filesChanged([{ uri: blockUri, type: 2 }])
		await editor.until(missing, 'the block has another name')
		await writeFile(path.join(folder, 'block.stave'), block('steps'))
		await editor.filesChanged([{ uri: blockUri, type: 2 }])
		await editor.until(() => !missing(), 'the block is back')
	})

	it('when a file is deleted, made or renamed', async () => {
		const { folder, blockUri, missing, editor } = await twoFiles()
		await unlink(path.join(folder, 'block.stave'))
		await editor.filesChanged([{ uri: blockUri, type: 3 }])
		await editor.until(missing, 'the block is gone')
		await writeIn(folder, 'again.stave', block('steps'))
		await editor.filesChanged([{ uri: uriOf(folder, 'again.stave'), type: 1 }])
		await editor.until(() => !missing(), 'the new file has the block')
		await mkdir(path.join(folder, 'deep'))
		await rename(path.join(folder, 'again.stave'), path.join(folder, 'deep', 'moved.stave'))
		await editor.filesChanged([
			{ uri: uriOf(folder, 'again.stave'), type: 3 },
			{ uri: uriOf(folder, 'deep/moved.stave'), type: 1 },
		])
		const places = async () => {
			const found = await editor.request<{ location: { uri: string } }[]>('workspace/symbol', { query: 'steps' })
			return found.map(one => one.location.uri)
		}
		const moved = uriOf(folder, 'deep/moved.stave')
		// Files are read in a moment after the editor has named them.
		while (!(await places()).includes(moved)) await new Promise(resolve => setTimeout(resolve, 20))
		expect(await places()).toEqual([moved])
		expect(missing()).toBe(false)
	})

	it('when a whole folder is deleted, though the editor names it alone', async () => {
		const folder = await makeFolder({ 'blocks/block.stave': block('steps'), 'plan.stave': plan('steps') })
		editor = await Editor.start([folder])
		const planUri = await editor.open(folder, 'plan.stave')
		await editor.until(() => editor!.published.some(one => one.uri === planUri), 'the plan is published')
		await rm(path.join(folder, 'blocks'), { recursive: true })
		await editor.filesChanged([{ uri: uriOf(folder, 'blocks'), type: 3 }])
		await editor.until(() => editor!.codesOf(planUri).includes('unknown-name'), 'the block is gone with its folder')
	})

	it('when an open text is of a file that the disk changes under it', async () => {
		const { folder, blockUri, missing, editor } = await twoFiles()
		await editor.open(folder, 'block.stave')
		await writeFile(path.join(folder, 'block.stave'), block('other'))
		await editor.filesChanged([{ uri: blockUri, type: 2 }])
		await editor.settled()
		expect(missing()).toBe(false)
		await editor.close(blockUri)
		await editor.until(missing, 'closed, the disk counts')
	})
})

describe('a fault in a file that is not open', () => {
	it('is told before the first file is opened as after it, and stays when it is closed', async () => {
		const folder = await makeFolder({ 'faulty.stave': block('one').replace('deadlift', 'dedlift'), 'sound.stave': block('two') })
		editor = await Editor.start([folder])
		const faulty = uriOf(folder, 'faulty.stave')
		const known = async () => {
			await editor!.settled()
			return editor!.problemsOf(faulty)
		}
		const before = await known()
		expect(before.map(one => one.code)).toContain('unknown-name')
		const sound = await editor.open(folder, 'sound.stave')
		expect(await known()).toEqual(before)
		await editor.open(folder, 'faulty.stave')
		expect(await known()).toEqual(before)
		await editor.close(faulty)
		await editor.close(sound)
		expect(await known()).toEqual(before)
		const again = await Editor.start([folder])
		await again.open(folder, 'faulty.stave')
		await again.settled()
		expect(again.problemsOf(faulty)).toEqual(before)
		await again.stop()
	})
})

describe('versions', () => {
	it('of what is told only grow, and the last is that of the last key', async () => {
		const folder = await makeFolder({ 'a.stave': block('steps') })
		editor = await Editor.start([folder])
		const uri = await editor.open(folder, 'a.stave')
		await editor.settled()
		let last = 0
		for (let key = 0; key < 40; key++) {
			last = await editor.change(uri, block('steps').replace('deadlift', key % 2 === 0 ? 'dedlift' : 'deadlift'))
			// Some keys are looked at one by one, some come together.
			if (key % 5 === 0) await editor.settled()
		}
		const final = await editor.change(uri, block('steps').replace('deadlift', 'dadlift'))
		expect(final).toBe(last + 1)
		await editor.until(
			() => editor!.problemsOf(uri).some(one => String(one.message).includes('dadlift')),
			'the last key is told of',
		)
		const versions = editor.published.filter(one => one.uri === uri).map(one => one.version!)
		expect(versions).toEqual([...versions].sort((a, b) => a - b))
		expect(versions.at(-1)).toBe(final)
		for (const { diagnostics, version } of editor.published.filter(one => one.uri === uri))
			if (version !== final && version! > 1)
				expect(diagnostics.some(one => String(one.message).includes('dedlift'))).toBe(version! % 2 === 0)
	})
})

describe('two folders', () => {
	it('say the same whichever file is opened first, also after definitions are deleted', async () => {
		const one = await makeFolder({
			'a.stave': block('steps').replace('deadlift', 'mine'),
			'b.stave': 'movement mine "Mine"\nbreakdown odd "Odd"\nrules house\n  unused-definition warning\n',
		})
		const two = await makeFolder({ 'a.stave': block('steps').replace('deadlift', 'mine'), 'c.stave': 'breakdown odd "Odd"\n' })
		const all = [
			[one, 'a.stave'],
			[one, 'b.stave'],
			[two, 'a.stave'],
			[two, 'c.stave'],
		] as const
		const told = new Set<string>()
		for (const first of all) {
			for (const order of [
				[one, two],
				[two, one],
			]) {
				editor = await Editor.start(order)
				await editor.open(first[0], first[1])
				await editor.settled()
				const known = () => JSON.stringify(all.map(([folder, name]) => editor!.problemsOf(uriOf(folder, name))))
				const before = known()
				const rules = await (first[1] === 'b.stave' ? uriOf(first[0], first[1]) : editor.open(one, 'b.stave'))
				await editor.change(rules, 'breakdown odd "Odd"\n')
				await editor.settled()
				// Its movement and its levels are gone with the text, in its own folder alone.
				expect(editor.codesOf(uriOf(one, 'a.stave'))).toContain('unknown-name')
				expect(editor.problemsOf(rules).map(problem => problem.severity)).toEqual([4])
				told.add(`${before} ${known()}`)
				await editor.stop()
				editor = undefined
			}
		}
		expect(told.size).toBe(1)
	})

	it('have their own names and levels, whichever comes first', async () => {
		const one = await makeFolder({
			'a.stave': `${block('steps')}breakdown mine "Mine"\nrules house\n  unused-definition warning\n`,
		})
		const two = await makeFolder({ 'a.stave': `${block('steps')}breakdown mine "Mine"\n` })
		for (const order of [
			[one, two],
			[two, one],
		]) {
			editor = await Editor.start(order)
			const first = uriOf(one, 'a.stave')
			const second = uriOf(two, 'a.stave')
			await editor.until(
				() => editor!.codesOf(first).includes('unused-definition') && editor!.codesOf(second).includes('unused-definition'),
				'both are checked',
			)
			const levelIn = (uri: string) => editor!.problemsOf(uri).find(problem => problem.code === 'unused-definition')?.severity
			expect([levelIn(first), levelIn(second)]).toEqual([2, 4])
			expect(editor.codesOf(first)).not.toContain('duplicate-name')
			await editor.stop()
			editor = undefined
		}
	})
})
