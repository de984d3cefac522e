import { Command } from 'commander'
import { type Definition, type DefinitionKind, definitionKinds } from '../../../language/model/definitions.ts'
import { nearest } from '../../../language/names/nearest.ts'
import { indexedWords, sectionsAbout } from '../../../language/reference/index.ts'
import { type Description, describe } from '../../../language/reports/description.ts'
import { ruleOf, rules } from '../../../language/rules/registry.ts'
import { areaTitles, type Rule } from '../../../language/rules/rule.ts'
import { levelOf } from '../../../language/workspace/problems.ts'
import { layoutFor, print } from '../output.ts'
import { Refusal } from '../refusal.ts'
import { paragraph, Table, widthOf, wrap } from '../text/columns.ts'
import { pageText, written } from '../text/page.ts'
import { plain } from '../text/plain.ts'
import type { Style } from '../text/style.ts'
import { openWorkspace, type Workspace } from '../workspace/workspace.ts'
import { definitionCalled } from './named.ts'
import { workspaceOption } from './options.ts'

/** `explain CODE|NAME|WORD`: the page of a rule, what is known of a movement or another definition, what a word of the language means, or all names of a kind. */
export function explain(): Command {
	return new Command('explain')
		.description('explain a rule, a movement or another name, a word of the language, or list what there is')
		.argument(
			'[name]',
			'the code of a rule, a name, a word such as deload, or a kind such as breakdowns, which lists them; without one, all rules are listed',
		)
		.addOption(workspaceOption())
		.action(run)
}

async function run(name: string | undefined, options: { readonly workspace?: string }): Promise<void> {
	const { style, width } = layoutFor(undefined)
	const workspace = await openWorkspace(options.workspace)
	if (name === undefined) {
		print(listOfRules(workspace, style))
		return
	}
	const word = name.trim().toLowerCase()
	const rule = ruleOf(word)
	const kind = definitionKinds.find(one => word === one || word === `${one}s`)
	const definitions = definitionKinds.flatMap(one => definitionCalled(workspace.folder, [one], name) ?? [])
	const parts = [
		...(rule ? [ruleText(rule, workspace, style, width)] : []),
		...definitions.map(one => definitionText(one, workspace, style, width)),
		...sectionsAbout(kind ?? word).map(section => pageText(withoutLinks(section), style, width)),
		...(kind ? listOf(kind, workspace, style) : []),
	]
	if (parts.length === 0) throw unknown(name, workspace)
	print(parts.join('\n\n'))
}

/** A section of the reference without what is for links, for tests, and for the examples of other sections. */
function withoutLinks(section: string): string {
	return section
		.replace(/^<!--.*-->\n+/gm, '')
		.replace(/^The examples below stand.*\n+```[\s\S]*?^```$/m, '')
		.replace(/\[([^\]]+)\]\([^)]*\)/g, '$1')
}

/** The names of a kind with their titles, as a coach looks for one; those of the workspace first. */
function listOf(kind: DefinitionKind, { folder }: Workspace, style: Style): string[] {
	const all = folder.all(kind).filter(({ name }) => name.text !== '')
	const built = Map.groupBy(all, one => folder.isBuiltIn(one))
	const table = new Table([{ title: '' }, { title: '' }, { title: '' }], all.map(listed))
	return [false, true].flatMap(isBuiltIn => {
		const rows = built.get(isBuiltIn)?.map(one => `  ${table.row(listed(one))}`)
		return rows ? [[style.strong(isBuiltIn ? 'Built in' : 'In this workspace'), ...rows].join('\n')] : []
	})
}

function listed(definition: Definition): string[] {
	const weakLinks = definition.kind === 'breakdown' ? `weak link ${(definition.weakLinks?.value ?? []).join(', ')}` : ''
	return [definition.name.text, plain(definition.title?.text ?? ''), weakLinks]
}

function unknown(name: string, { folder }: Workspace): Refusal {
	const names = definitionKinds.flatMap(kind => folder.all(kind).map(one => one.name.text))
	const near = nearest(name, [...rules.map(rule => rule.code), ...names, ...indexedWords])
	return new Refusal(plain(`Nothing is called "${name}".${near === undefined ? '' : ` Did you mean "${near}"?`}`))
}

function listOfRules({ folder }: Workspace, style: Style): string {
	const rows = rules.map(rule => ({ area: rule.area, cells: [rule.code, levelOf(rule, folder), rule.summary] }))
	const table = new Table(
		[{ title: 'Code' }, { title: 'Level' }, { title: 'Reported when' }],
		rows.map(row => row.cells),
	)
	const areas = [...Map.groupBy(rows, row => row.area)]
	return areas
		.map(([area, rows]) => [style.strong(areaTitles[area]), ...rows.map(row => `  ${table.row(row.cells)}`)].join('\n'))
		.join('\n\n')
}

function ruleText(rule: Rule, { folder }: Workspace, style: Style, width: number): string {
	const level = levelOf(rule, folder)
	const stated = level === rule.level ? '' : ` (in this workspace; else ${rule.level})`
	const facts = `${rule.code} · ${level}${stated} · since ${rule.since} · source: ${rule.source}`
	return [style.quiet(written(facts, style)), pageText(rule.page, style, width)].join('\n\n')
}

function definitionText(definition: Definition, workspace: Workspace, style: Style, width: number): string {
	const description = describe(definition, workspace.folder)
	const { heading, caution, notes, source } = description
	const parts = [
		[style.strong(plain(heading)), style.quiet(plain(placeOf(definition, workspace)))].join('\n'),
		...(caution === undefined ? [] : [style.level('warning', paragraph(`Caution: ${plain(caution)}`, 0, width))]),
		...notes.map(note => paragraph(plain(note), 0, width)),
		...factsText(description, style, width),
		...(source === undefined ? [] : [style.quiet(paragraph(`Source: ${plain(source)}`, 0, width))]),
	]
	return parts.join('\n\n')
}

function factsText({ facts }: Description, style: Style, width: number): string[] {
	if (facts.length === 0) return []
	const indent = Math.max(...facts.map(fact => widthOf(plain(fact.label)))) + 4
	const lines = facts.map(fact => {
		const label = plain(fact.label)
		const gap = ' '.repeat(indent - 2 - widthOf(label))
		return `  ${style.quiet(label)}${gap}${wrap(plain(fact.text), width - indent).join(`\n${' '.repeat(indent)}`)}`
	})
	return [lines.join('\n')]
}

/** Where it stands, and whether it is the library's own. */
function placeOf(definition: Definition, workspace: Workspace): string {
	if (workspace.folder.isBuiltIn(definition)) return 'built in'
	const place = workspace.folder.placeOf(definition, definition.header)
	const replaces = workspace.folder.builtIn(definition.kind, definition.name.text) ? ', in place of the built-in one' : ''
	if (!place) return ''
	const path = workspace.pathOf(place.uri)
	const before = workspace.files.get(path)?.text.slice(0, place.start) ?? ''
	return `${path}:${before.split(/\r\n|\r|\n/).length}${replaces}`
}
