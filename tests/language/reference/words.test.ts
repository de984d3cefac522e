import { AstUtils, GrammarAST } from 'langium'
import { expect, test } from 'vitest'
import { weekdays } from '../../../language/model/quantities.ts'
import { deviations, estimators, levels, links, muscles, patterns, roles } from '../../../language/model/vocabulary.ts'
import { anchorOf } from '../../../language/reference/index.ts'
import { library } from '../../../language/workspace/library.ts'
import { type Entry, entries, folder, rules } from './support/pages.ts'

/** The page "Words and lists" is made of the grammar, the word lists and the library. `vitest run -u` on this file writes it anew. */
const built = [...library().files.values()].flatMap(({ parts }) => parts.flatMap(({ definition }) => definition ?? []))

test('the page "Words and lists" is up to date', async () => {
	await expect(page()).toMatchFileSnapshot(`${folder}/words.md`)
})

function page(): string {
	return `# Words and lists

Made from the grammar, the word lists and the library by a test, which fails when this page is behind.

## Words

Every word of the language, and the forms that it stands in.

${wordList()}

## Patterns

${listed(patterns)}

## Muscles

${listed(muscles)}

## Links of the chain

${listed(links)}

## Roles

${listed(roles)}

## Days

${listed(weekdays)}

## Estimates

Formulas, and the two published tables at the end; where each is from stands in [Numbers](../compute/NUMBERS.md).

${listed(estimators)}

## Deviations

${listed(deviations)}

## Levels of rules

${listed(levels)}

## Movements

${table(
	['Name', 'Title', 'Pattern', 'Trains'],
	built.flatMap(one =>
		one.kind === 'movement' ? [[name(one), titleOf(one), one.pattern?.value ?? '', one.trains?.value.join(', ') ?? '']] : [],
	),
)}

## Breakdowns

${table(
	['Name', 'Title', 'Weak link'],
	built.flatMap(one => (one.kind === 'breakdown' ? [[name(one), titleOf(one), one.weakLinks?.value.join(', ') ?? '']] : [])),
)}

## Progressions

${table(
	['Name', 'Title', 'Steps'],
	built.flatMap(one =>
		one.kind === 'progression' ? [[name(one), titleOf(one), one.steps.map(step => step.movement.text).join(', ')]] : [],
	),
)}
`
}

// Words -------------------------------------------------------------------------------------------------------------------------------------

function wordList(): string {
	const places = new Map<string, Set<string>>()
	for (const rule of rules) {
		const found = entriesFor(rule, new Set())
		for (const { value } of AstUtils.streamAllContents(rule).filter(GrammarAST.isKeyword)) {
			if (!/^[a-z]/.test(value)) continue
			places.set(value, new Set([...(places.get(value) ?? []), ...found.map(linkTo)]))
		}
	}
	const sorted = [...places].sort(([a], [b]) => (a < b ? -1 : 1))
	return sorted.map(([word, found]) => `- \`${word}\`: ${[...found].sort().join(', ')}`).join('\n')
}

/** The entries about a rule; of a part, those about the rules that it is a part of. */
function entriesFor(rule: GrammarAST.ParserRule, seen: Set<GrammarAST.ParserRule>): Entry[] {
	if (seen.has(rule)) return []
	seen.add(rule)
	const own = entries.filter(entry => entry.forms.includes(rule.name))
	if (own.length > 0) return own
	const above = rules.filter(other =>
		AstUtils.streamAllContents(other).some(node => GrammarAST.isRuleCall(node) && node.rule.ref === rule),
	)
	return above.flatMap(other => entriesFor(other, seen))
}

function linkTo({ page: file, title }: Entry): string {
	const [short] = title.split(/: (?=[^`])/)
	return `[${short}](${file}#${anchorOf(title)})`
}

// Markdown ----------------------------------------------------------------------------------------------------------------------------------

function listed(words: readonly string[]): string {
	const lines = ['']
	for (const [index, word] of words.entries()) {
		const next = `\`${word}\`${index < words.length - 1 ? ',' : ''}`
		const last = lines[lines.length - 1]!
		if (last.length + next.length + 1 > 120) lines.push(next)
		else lines[lines.length - 1] = last === '' ? next : `${last} ${next}`
	}
	return lines.join('\n')
}

function table(titles: readonly string[], rows: readonly (readonly string[])[]): string {
	const widths = titles.map((title, column) => Math.max(title.length, ...rows.map(row => row[column]!.length)))
	const line = (cells: readonly string[]) => `| ${cells.map((cell, column) => cell.padEnd(widths[column]!)).join(' | ')} |`
	return [line(titles), line(widths.map(width => '-'.repeat(width))), ...rows.map(line)].join('\n')
}

function name(definition: { name: { text: string } }): string {
	return `\`${definition.name.text}\``
}

function titleOf(definition: { title: { text: string } | undefined }): string {
	return definition.title?.text ?? ''
}
