import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { pictureOfPlan } from '../../../../language/reports/picture.ts'
import type { Picture } from '../../../../language/reports/preview.ts'
import { Folder } from '../../../../language/workspace/folder.ts'
import { TextReader } from '../../../../language/workspace/text-file.ts'

const club = path.resolve(import.meta.dirname, '../../../../examples/club')

/** The pictures of all plans of the example club. */
export function clubPictures(): Map<string, Picture> {
	const folder = new Folder(new TextReader())
	for (const file of readdirSync(club, { recursive: true, encoding: 'utf8' }).filter(name => name.endsWith('.stave')))
		folder.setFile(file, readFileSync(path.join(club, file), 'utf8'))
	return new Map(folder.all('plan').map(plan => [plan.name.text, pictureOfPlan(plan, folder, { problems: [] })]))
}
