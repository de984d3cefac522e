import { mkdir, mkdtemp, realpath, writeFile } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { textsBelow } from '../support/texts.ts'
import { seeded } from './seeded.ts'

const club = textsBelow('examples/club')
const shared = Object.entries(club).filter(([name]) => /^(gyms|breakdowns)\//.test(name))
const lifters = ['mara', 'ilse', 'jon', 'nadia', 'per', 'rosa', 'tom']

/** Blocks that a plan of the club runs, by name. */
const blocksOf = (plan: string) => [...plan.matchAll(/^\s*run\s+([a-z0-9-]+)/gm)].map(match => match[1]!)

/** One lifter of the club with plan and blocks, under names of its own: a sound text of about a hundred lines. */
function fileText(index: number, random: () => number): string {
	const who = lifters[Math.floor(random() * lifters.length)]!
	const lifterFile = Object.entries(club).find(([name]) => name.startsWith(`lifters/${who}`))![1]
	const plan = club[`plans/${who}-autumn.stave`]!
	const blocks = blocksOf(plan).map(name => club[`blocks/${name}.stave`]!)
	const ownNames = [lifterFile, plan, ...blocks].flatMap(text =>
		[...text.matchAll(/^(?:lifter|plan|block)\s+([a-z0-9-]+)/gm)].map(match => match[1]!),
	)
	let text = [lifterFile, ...blocks, plan].join('\n')
	for (const name of ownNames) text = text.replaceAll(new RegExp(`(?<![\\w-])${name}(?![\\w-])`, 'g'), `${name}-${index}`)
	return text
}

/** A workspace folder of so many files, the same for one seed; made anew in the machine's place for such things. */
export async function makeWorkspace(files: number, seed = 1): Promise<string> {
	const folder = await realpath(await mkdtemp(path.join(os.tmpdir(), `barstave-bench-${files}-`)))
	const random = seeded(seed)
	for (const [name, text] of shared) {
		await mkdir(path.dirname(path.join(folder, name)), { recursive: true })
		await writeFile(path.join(folder, name), text)
	}
	for (let index = 0; index < files; index++) await writeFile(path.join(folder, fileName(index)), fileText(index, random))
	return folder
}

export const fileName = (index: number) => `lifter-${String(index).padStart(4, '0')}.stave`
