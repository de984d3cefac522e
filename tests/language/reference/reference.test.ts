import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { AstUtils, CstUtils, GrammarAST } from 'langium'
import { describe, expect, test } from 'vitest'
import { formatText } from '../../../language/formatting/format.ts'
import type { DefinitionKind } from '../../../language/model/definitions.ts'
import { roles } from '../../../language/model/vocabulary.ts'
import { exampleLines } from '../../../language/parser/examples.ts'
import { DefinitionParser } from '../../../language/parser/parse.ts'
import { splitDefinitions } from '../../../language/parser/split.ts'
import { anchorOf, entryAbout, referencePages } from '../../../language/reference/index.ts'
import { described, listed, marksIn, problemsOfTexts } from '../rules/harness/workspace.ts'
import { type Example, entries, folder, hasForm, placed, reader, rules } from './support/pages.ts'

/**
 * The reference is complete, and true: every form of the grammar has an entry with an example of it, every word of the grammar stands in an
 * example, and every example reads, is laid out, and checks without a word but for what it shows on purpose.
 */
const { grammarServices } = reader

// Definitions ---------------------------------------------------------------------------------------------------------------------------

const keyOf = (text: string) => /^([a-z]+) ([\w-]+)/.exec(text)?.slice(1).join(' ')
const partsOf = (text: string) => reader.read('a.stave', text).parts.map(part => part.text)
const club = entries
	.filter(({ page }) => page === 'README.md')
	.flatMap(({ examples }) => examples.flatMap(({ whole }) => partsOf(whole)))

/** The club of the pages, apart from what an example says itself. */
function clubBeside(whole: string): string {
	const own = new Set(partsOf(whole).map(keyOf))
	// One plan at a time.
	const isOther = (part: string) => !own.has(keyOf(part)) && !(part.startsWith('plan') && /^plan /m.test(whole))
	return club.filter((part, index) => isOther(part) && club.findIndex(one => keyOf(one) === keyOf(part)) === index).join('\n')
}

// Grammar -------------------------------------------------------------------------------------------------------------------------------

interface Parsed {
	readonly types: ReadonlySet<string>
	readonly elements: ReadonlySet<GrammarAST.AbstractElement>
}

/** What of the grammar stands in the stretch of a text. */
function usedIn({ whole, start, text }: Example): Parsed {
	const parser = new DefinitionParser(grammarServices)
	const { tokens } = reader.tokenize(whole)
	const types = new Set<string>()
	const elements = new Set<GrammarAST.AbstractElement>()
	for (const stretch of splitDefinitions(tokens, whole.length)) {
		for (const { tree, start: within } of parser.parse(stretch, whole)) {
			if (!tree?.$cstNode) continue
			for (const node of CstUtils.streamCst(tree.$cstNode)) {
				const at = stretch.start + within + node.offset
				if (at < start || at >= start + text.length) continue
				types.add(node.astNode.$type)
				if (!node.grammarSource) continue
				elements.add(node.grammarSource)
				const rule = AstUtils.getContainerOfType(node.grammarSource, GrammarAST.isParserRule)
				if (rule) types.add(rule.name)
			}
		}
	}
	return { types, elements }
}

const used = new Map(entries.map(entry => [entry, entry.examples.map(usedIn)]))

/** What is read though it is not our form stands on a page of its own, row by row. */
const pasted = [...readFileSync(`${folder}/pasted.md`, 'utf8').matchAll(/^```stave\n([\s\S]*?)^```|^\| `([^`]+)`/gm)]
	.reduce<{ around: string; rows: Example[] }>(
		({ around, rows }, [, fence, row]) =>
			fence === undefined ? { around, rows: [...rows, placed(row!, around)] } : { around: fence, rows },
		{ around: '…', rows: [] },
	)
	.rows.map(usedIn)

test('every form of the grammar has one entry', () => {
	const forms = entries.flatMap(entry => entry.forms)
	const wanted = [...rules.filter(hasForm).map(rule => rule.name), ...Object.keys(exampleLines)]
	const shared = new Set(['EquipmentLine', 'RequiresLine'])
	expect([...new Set(wanted)].filter(form => !forms.includes(form))).toEqual([])
	expect(forms.filter((form, index) => forms.indexOf(form) !== index && !shared.has(form))).toEqual([])
})

describe.each(entries.filter(entry => entry.forms.length > 0))('$page: $title', entry => {
	test('says what it means, and shows it', () => {
		expect(entry.prose).toMatch(/[.:]$|\|$/)
		const types = new Set(used.get(entry)!.flatMap(one => [...one.types]))
		expect(entry.forms.filter(form => form !== 'Document' && !types.has(form))).toEqual([])
	})
})

describe.each(entries.flatMap(({ page, title, examples }) => examples.map(example => ({ page, title, ...example }))))(
	'$page: $title: $text',
	({ whole }) => {
		test('reads and checks without a word, but for what it shows', () => {
			const texts = new Map([
				['example.stave', whole],
				['club.stave', clubBeside(whole)],
			])
			const marks = marksIn(texts)
			const found = problemsOfTexts(texts).filter(one => one.file === 'example.stave' && one.code !== 'unused-definition')
			const codes = marks.map(mark => mark.code)
			expect(listed(found.filter(one => codes.includes(one.code)))).toEqual(listed(marks))
			expect(described(found.filter(one => !codes.includes(one.code)))).toEqual([])
		})

		test('is laid out', () => {
			expect(formatText(whole, reader)).toBe(whole)
		})
	},
)

test('every word of the grammar stands in an example', () => {
	const all = new Set([...[...used.values()].flat(), ...pasted].flatMap(one => [...one.elements]))
	const words = rules.flatMap(rule =>
		AstUtils.streamAllContents(rule)
			.filter(GrammarAST.isKeyword)
			.filter(element => !all.has(element))
			.map(element => `${rule.name}: ${element.value}`)
			.toArray(),
	)
	expect(words).toEqual([])
})

test('every entry is found by its form, and every page is in the program', () => {
	expect(Object.keys(referencePages).sort()).toEqual(
		readdirSync(folder)
			.filter(file => file.endsWith('.md'))
			.sort(),
	)
	for (const { page, title, forms } of entries) {
		for (const form of forms) {
			const found = entryAbout(form)
			expect(found, form).toMatchObject(form === 'EquipmentLine' || form === 'RequiresLine' ? {} : { page, title })
			expect(found!.lead, form).not.toBe('')
		}
	}
})

test('every entry begins with whole sentences, and each row and point of it is found by how it is written', () => {
	for (const { page, title, forms, prose } of entries.filter(entry => entry.forms.length > 0)) {
		const { lead, ways } = entryAbout(forms[0]!, page.slice(0, -'.md'.length) as DefinitionKind)!
		expect(lead, title).toMatch(/^[^|-].*\.\)?$/)
		const written = [...prose.matchAll(/^(?:\| |- )`([^`]+)`/gm)].map(([, first]) => first!)
		expect(
			ways.map(way => way.written[0]),
			title,
		).toEqual(written)
		for (const { text } of ways) expect(text, title).toMatch(/^`[^`]+`.* [a-z]/)
	}
	expect(entryAbout('AtClause')!.ways.length).toBeGreaterThan(8)
	expect(entryAbout('Role')!.ways.map(way => way.written)).toEqual(roles.map(role => [role]))
})

test('links lead somewhere', () => {
	const pages = new Map(readdirSync(folder).map(page => [page, readFileSync(`${folder}/${page}`, 'utf8')]))
	for (const [page, text] of pages) {
		for (const [link, file, anchor] of text.matchAll(/\]\(([^)#]*)(?:#([^)]*))?\)/g)) {
			const target = file === '' ? page : file!
			expect(existsSync(`${folder}/${target}`), `${page}: ${link}`).toBe(true)
			if (anchor)
				expect(
					[...(pages.get(target) ?? '').matchAll(/^#+ (.*)$/gm)].map(match => anchorOf(match[1]!)),
					`${page}: ${link}`,
				).toContain(anchor)
		}
	}
})
