import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'

const root = path.resolve(import.meta.dirname, '../..')

/** All `.stave` texts below a folder of ours, by path. */
export function textsBelow(folder: string): Record<string, string> {
	const names = readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' })
	const ours = names.filter(name => name.endsWith('.stave')).sort()
	return Object.fromEntries(ours.map(name => [name, readFileSync(path.join(root, folder, name), 'utf8')]))
}
