import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join, relative, sep } from 'node:path'
import { levels } from '../../../../language/model/vocabulary.ts'
import { type FileProblem, fileProblems } from '../../../../language/workspace/file-problems.ts'
import { Folder } from '../../../../language/workspace/folder.ts'
import { library } from '../../../../language/workspace/library.ts'
import { TextReader } from '../../../../language/workspace/text-file.ts'

/** Texts of a workspace folder, by path. */
export type Texts = ReadonlyMap<string, string>

/** A code at a line (from 1) of a file: what a mark expects, or what was found. */
export interface Place {
	readonly file: string
	readonly line: number
	readonly code: string
}

export interface Found extends Place {
	readonly problem: FileProblem
}

const reader = new TextReader()

export function folderOf(texts: Texts): Folder {
	const folder = new Folder(reader)
	for (const [file, text] of texts) folder.setFile(file, text)
	return folder
}

/** All problems of a workspace, in the order of its files and lines. Throws where one points outside its text or is no message. */
export function problemsOfTexts(texts: Texts): readonly Found[] {
	const folder = folderOf(texts)
	return [...texts].flatMap(([file, text]) =>
		fileProblems(folder, file).map(problem => {
			holdsTogether(problem, file, texts)
			return { file, line: lineOf(text, problem.start), code: problem.code, problem }
		}),
	)
}

/** `// expect: code, other` at the end of a line: each code is reported at that line, as often as it is named there. */
export function marksIn(texts: Texts): readonly Place[] {
	return [...texts].flatMap(([file, text]) =>
		text.split('\n').flatMap((line, index) => {
			const marked = /\/\/ expect: ([a-z-]+(?:, [a-z-]+)*)\s*$/.exec(line)?.[1]
			if (!marked && line.includes('// expect')) throw new Error(`${file}:${index + 1}: this mark does not read: ${line.trim()}`)
			return (marked?.split(', ') ?? []).map(code => ({ file, line: index + 1, code }))
		}),
	)
}

export function isAtLeast(level: FileProblem['level'], least: FileProblem['level']): boolean {
	return levels.indexOf(level) >= levels.indexOf(least)
}

/** Places as sorted lines of text: what a failing test shows. */
export function listed(places: readonly Place[]): readonly string[] {
	return places.map(({ file, line, code }) => `${file}:${line} ${code}`).sort()
}

/** The same, with the messages, for what should not be there. */
export function described(found: readonly Found[]): readonly string[] {
	return found.map(({ file, line, code, problem }) => `${file}:${line} ${problem.level} ${code}: ${problem.message}`).sort()
}

/** Every `.stave` file below a folder, by its path there. */
export function textsBelow(folder: string): Texts {
	const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(path => path.endsWith('.stave'))
	return new Map(
		files
			.map(path => join(folder, path))
			.filter(path => statSync(path).isFile())
			.sort()
			.map(path => [relative(folder, path).split(sep).join('/'), readFileSync(path, 'utf8')]),
	)
}

/** The text with a correction made. */
export function corrected(text: string, edits: readonly { start: number; end: number; text: string }[]): string {
	const fromTheEnd = [...edits].sort((a, b) => b.start - a.start || b.end - a.end)
	return fromTheEnd.reduce((before, edit) => before.slice(0, edit.start) + edit.text + before.slice(edit.end), text)
}

function lineOf(text: string, offset: number): number {
	return text.slice(0, offset).split('\n').length
}

function holdsTogether(problem: FileProblem, file: string, texts: Texts): void {
	const where = `${file}: ${problem.code}: ${problem.message}`
	const within = (uri: string, start: number, end: number) => {
		const text = texts.get(uri) ?? library().files.get(uri)?.text
		if (text === undefined) throw new Error(`${where}: points into ${uri}, which does not exist`)
		if (start < 0 || end < start || end > text.length) throw new Error(`${where}: ${start}-${end} lies outside ${uri}`)
	}
	within(file, problem.start, problem.end)
	if (problem.start === problem.end) throw new Error(`${where}: marks no character`)
	for (const place of problem.related) within(place.uri, place.start, place.end)
	for (const { edits } of problem.corrections) for (const edit of edits) within(file, edit.start, edit.end)
	const texted = [problem.message, ...problem.related.map(one => one.message), ...problem.corrections.map(one => one.title)]
	for (const said of texted) {
		if (said === '' || /undefined|null|NaN|\[object/.test(said)) throw new Error(`${where}: no message for a person: "${said}"`)
	}
}
