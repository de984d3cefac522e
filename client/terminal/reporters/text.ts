import { libraryScheme } from '../../../language/workspace/library.ts'
import { type CheckResult, type RelatedPlace, type ShownProblem, shownLevels } from '../checking/check-result.ts'
import { padEnd, paragraph, widthOf } from '../text/columns.ts'
import { plain } from '../text/plain.ts'
import { counted, countedLevel } from '../text/words.ts'
import type { Reporter, ReportSetting } from './reporter.ts'

/** Messages stand under the text that they are about, set in by this much. */
const indent = 4

/** For people: file by file, each fault under the line of text that it is in, and a last line that counts. */
export const text: Reporter = (result, setting) => {
	const byFile = Map.groupBy(result.problems, problem => problem.file)
	const files = [...byFile].map(([file, problems]) => {
		const heading = setting.style.heading(plain(setting.shownPath(file)))
		return [heading, ...problems.map(problem => oneProblem(problem, setting))].join('\n\n')
	})
	return [...files, closingLine(result, setting)].join('\n\n')
}

function oneProblem(problem: ShownProblem, setting: ReportSetting): string {
	const { style, width } = setting
	const place = padEnd(`${problem.line}:${problem.column}`, 8)
	const head = `  ${place}${style.level(problem.level, problem.level)}  ${style.quiet(problem.code)}`
	const quoted = quotedLine(problem, setting)
	const message = paragraph(plain(problem.message), indent, width)
	const related = problem.related.map(place => paragraph(`→ ${relatedText(place, problem.file, setting)}`, indent, width))
	return [head, ...quoted, message, ...related.map(style.quiet)].join('\n')
}

function relatedText({ file, line, column, message }: RelatedPlace, from: string, setting: ReportSetting): string {
	const where = file === from ? `${line}:${column}` : `${placeName(file, setting)}:${line}:${column}`
	return plain(message === '' ? where : `${where}  ${message}`)
}

function placeName(file: string, setting: ReportSetting): string {
	return file.startsWith(`${libraryScheme}:`) ? `built-in ${file.slice(libraryScheme.length + 2)}` : setting.shownPath(file)
}

/** The line of the fault and a mark under it; of a long line the part around the fault. */
function quotedLine(problem: ShownProblem, { style, width, lineOf }: ReportSetting): string[] {
	const line = lineOf(problem.file, problem.line)
	if (line === undefined || line.trim() === '') return []
	const start = problem.column - 1
	const end = problem.endLine === problem.line ? problem.endColumn - 1 : line.length
	const room = width - indent
	const leading = line.length - line.trimStart().length
	// A quarter of the room for what stands before the fault, where not everything fits.
	const from =
		widthOf(plain(line.slice(leading, Math.max(start, end)))) <= room
			? Math.min(leading, start)
			: Math.max(0, start - Math.floor(room / 4))
	const before = (from > leading ? '… ' : '') + plain(line.slice(from, start))
	const shownLine = cut(before + plain(line.slice(start).trimEnd()), room)
	const markWidth = Math.max(1, Math.min(widthOf(plain(line.slice(start, end).trimEnd())), room - widthOf(before)))
	const mark = ' '.repeat(widthOf(before)) + style.level(problem.level, '━'.repeat(markWidth))
	return [shownLine, mark].map(one => ' '.repeat(indent) + one)
}

/** The beginning of a text that fits, with a mark where more follows. */
function cut(text: string, width: number): string {
	if (widthOf(text) <= width) return text
	let kept = ''
	let taken = 0
	for (const letter of text) {
		taken += widthOf(letter)
		if (taken > width - 1) break
		kept += letter
	}
	return `${kept}…`
}

/** `12 files: 2 errors, 1 hint.` */
function closingLine({ files, counts, problems }: CheckResult, { style, correctable }: ReportSetting): string {
	const found = shownLevels
		.filter(level => counts[level] > 0)
		.map(level => style.level(level, countedLevel(level, counts[level])))
	if (found.length === 0) return style.good(`${counted(files, 'file')} checked, nothing to report.`)
	const line = `${counted(files, 'file')} checked: ${found.join(', ')}.`
	if (correctable === 0) return line
	const some = correctable === problems.length ? (correctable === 1 ? 'It' : 'All') : `${correctable} of them`
	return `${line}\n${some} can be corrected with --fix, without a change to the training.`
}
