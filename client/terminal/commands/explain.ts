import { Command } from 'commander'
import { type Definition, definitionKinds } from '../../../language/model/definitions.ts'
import { nearest } from '../../../language/names/nearest.ts'
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
import { workspaceOption } from './options.ts'

/** `explain CODE|NAME`: the page of a rule, or what is known of a movement, a breakdown, a progression or another definition. */
export function explain(): Command {
	return new Command('explain')
		.description('explain a rule by its code, or what a movement, a breakdown, a progression is')
		.argument('[name]', 'the code of a rule, or a name; without one, all rules are listed')
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
	const rule = ruleOf(name)
	const definitions = definitionKinds.flatMap(kind => workspace.folder.find(kind, name) ?? [])
	if (!rule && definitions.length === 0) throw unknown(name, workspace)
	const parts = definitions.map(one => definitionText(one, workspace, style, width))
	if (rule) parts.unshift(ruleText(rule, workspace, style, width))
	print(parts.join('\n\n'))
}

function unknown(name: string, { folder }: Workspace): Refusal {
	const names = definitionKinds.flatMap(kind => folder.all(kind).map(one => one.name.text))
	const near = nearest(name, [...rules.map(rule => rule.code), ...names])
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
