import { afterAll, beforeAll, expect, it } from 'vitest'
import type { PreviewData } from '../../language/reports/preview.ts'
import { rebuild } from '../support/rebuild.ts'
import { Editor, makeFolder, uriOf } from './support/editor.ts'

const edits = 2000
/** Edits after which what is kept once is there. */
const warmUp = 400

let editor: Editor
let folder: string
beforeAll(async () => {
	folder = await makeFolder({ 'club.stave': rebuild })
	editor = await Editor.start([folder], {}, undefined, {}, ['--expose-gc', '--import', heapOnSignal])
})
afterAll(() => editor.stop())

/** Lets the server say how much its heap holds after a collection, when it is asked with a signal. */
const heapOnSignal = `data:text/javascript,${encodeURIComponent(
	"process.on('SIGUSR2', () => { gc(); gc(); process.stderr.write('heap ' + process.memoryUsage().heapUsed + '\\n') })",
)}`

function heap(): Promise<number> {
	return new Promise(resolve => {
		editor.process.stderr!.once('data', (chunk: Buffer) => resolve(Number(/heap (\d+)/.exec(chunk.toString())![1])))
		editor.process.kill('SIGUSR2')
	})
}

it(`${edits} edits with the preview open leave less than 1 MB for each 100`, async () => {
	const uri = uriOf(folder, 'club.stave')
	const everything = { start: { line: 0, character: 0 }, end: { line: 999, character: 0 } }
	await editor.openText(uri, rebuild)
	await editor.settled()
	let before = 0
	for (let edit = 1; edit <= edits; edit++) {
		await editor.change(uri, rebuild.replace('at 72.5%', `at ${60 + (edit % 90) / 10}%`))
		// Each of them is taken in.
		const taken = editor.request('textDocument/documentSymbol', { textDocument: { uri } })
		if (edit % 20 !== 0) continue
		await taken
		const { picture } = await editor.request<PreviewData>('barstave/preview', { uri })
		expect(picture).not.toBeNull()
		await editor.request('textDocument/inlayHint', { textDocument: { uri }, range: everything })
		if (edit === warmUp) before = await heap()
	}
	const grown = (await heap()) - before
	expect(grown / 2 ** 20).toBeLessThan((edits - warmUp) / 100)
}, 600_000)
