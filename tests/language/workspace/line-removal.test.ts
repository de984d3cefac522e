import { expect, test } from 'vitest'
import { fileProblems } from '../../../language/workspace/file-problems.ts'
import { Folder } from '../../../language/workspace/folder.ts'
import { TextReader } from '../../../language/workspace/text-file.ts'

const corrected = (text: string, code: string) => {
	const folder = new Folder(new TextReader())
	folder.setFile('a.stave', text)
	const { edits } = fileProblems(folder, 'a.stave').find(one => one.code === code)!.corrections[0]!
	const fromTheEnd = edits.toSorted((a, b) => b.start - a.start)
	return fromTheEnd.reduce((all, { start, end, text: instead }) => all.slice(0, start) + instead + all.slice(end), text)
}

test.each(['\n', '\r\n'])('what takes a line away leaves no blank one (%j)', end => {
	const lines = ['lifter ann "Ann"', '  bodyweight 70 kg', '  bodyweight 71 kg', '  available monday', '']
	const kept = lines.filter(line => !line.includes('71'))
	expect(corrected(lines.join(end), 'stated-twice')).toBe(kept.join(end))
})

test('a comment on the line stays, and so do other words', () => {
	const text = 'lifter ann "Ann"\n  bodyweight 70 kg\n  bodyweight 71 kg // today\n'
	expect(corrected(text, 'stated-twice')).toBe('lifter ann "Ann"\n  bodyweight 70 kg\n   // today\n')
	const oneLine = 'lifter ann "Ann" bodyweight 70 kg bodyweight 71 kg available monday\n'
	expect(corrected(oneLine, 'stated-twice')).toBe('lifter ann "Ann" bodyweight 70 kg  available monday\n')
})

test('comments within what goes away stay', () => {
	const item = (...lines: readonly string[]) => ['block b "B"', '  weeks 2', '  session s on monday', ...lines, ''].join('\n')
	const kept = ['    accessory plank 3 x 30 s', '  session t on thursday', '    accessory safety-bar-good-morning 3 x 6 at 40 kg']
	const text = item(
		'    accessory safety-bar-good-morning /* slow */ 3 x 6 at 40 kg // as before',
		'      // the second week is a light one',
		'      note "stop // when it folds"',
		...kept,
	)
	expect(corrected(text, 'frequency-cap')).toBe(
		item('     /* slow */  // as before', '      // the second week is a light one', ...kept),
	)
})
