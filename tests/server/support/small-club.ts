import { Editor, makeFolder, uriOf } from './editor.ts'

/** One small club in three files; every test asks about a place in them. */
export const files = {
	'people.stave': `// 😀😀 漢 é
gym north-hall "North Hall 😀😀"
  bar barbell 20 kg
  plates 25 kg x 4, 20 kg x 2, 10 kg x 4, 5 kg x 4, 2.5 kg x 4, 1.25 kg x 4
  collars 2.5 kg

lifter mara-lind "Mara Lind"
  trains at north-hall
  best deadlift 160 kg on 2026-09-12
  fails deadlift with back-rounding above 80%
`,
	'block.stave': `block rebuild "Rebuild"
  weeks 2
  targets deadlift

  session heavy-pull "Heavy pull" on monday
    main deadlift 4 x 5 at 70%
    accessory plank 3 x 40 s
`,
	'plan.stave': `plan mara-autumn for mara-lind
  start 2026-10-05
  run rebuild
    allow missing-stability-work because "the plank comes later"
    add accessory romanian-deadlift 3 x 8 at 50% to heavy-pull
`,
}

/** An editor in which all of it is open, and read. */
export async function openSmallClub() {
	const folder = await makeFolder(files)
	const editor = await Editor.start([folder])
	for (const name of Object.keys(files)) await editor.open(folder, name)
	await editor.request('barstave/preview', {})
	/** The place of some words in a file. */
	const at = (name: keyof typeof files, text: string, after = 0) => {
		const offset = files[name].indexOf(text) + after
		const lines = files[name].slice(0, offset).split('\n')
		return editor.at(uriOf(folder, name), lines.length - 1, lines[lines.length - 1]!.length)
	}
	return { editor, folder, at }
}
