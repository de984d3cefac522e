import { expect, test } from 'vitest'
import { fileProblems } from '../../../language/workspace/file-problems.ts'
import { Folder } from '../../../language/workspace/folder.ts'
import { TextReader } from '../../../language/workspace/text-file.ts'

const corrected = (text: string, code: string) => {
	const folder = new Folder(new TextReader())
	folder.setFile('a.stave', text)
	const { start, end, text: instead } = fileProblems(folder, 'a.stave').find(one => one.code === code)!.corrections[0]!.edits[0]!
	return text.slice(0, start) + instead + text.slice(end)
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
