import { rules } from '../language/rules/registry.ts'
import { areaTitles, type Rule } from '../language/rules/rule.ts'
import { libraryScheme } from '../language/workspace/library.ts'

const folder = `${libraryScheme}:/rules/`

/** Where all rules are listed, with a link to each page. */
export const indexUri = `${folder}index.md`

/** Where the page of a rule is read: inside the editor, without a network. */
export function pageUri(code: string): string {
	return `${folder}${code}.md`
}

/** The page that a URI names, or `undefined`. */
export function pageAt(uri: string): string | undefined {
	if (uri === indexUri) return index()
	const rule = rules.find(one => pageUri(one.code) === uri)
	return rule && `${rule.page.trimEnd()}\n\n${factsOf(rule)}\n\n[All rules](${indexUri})\n`
}

/** Every rule at its level, unless a `rules` definition says otherwise. */
function index(): string {
	const areas = [...Map.groupBy(rules, rule => rule.area)].map(([area, ofArea]) => {
		const lines = ofArea.map(rule => `- [${rule.code}](${pageUri(rule.code)}) (${rule.level}): ${rule.summary}`)
		return `## ${areaTitles[area]}\n\n${lines.join('\n')}\n`
	})
	return `# The rules\n\n${lead} Every line of the language: [the reference](${libraryScheme}:/reference/README.md).\n\n${areas.join('\n')}`
}

const lead =
	'What each rule checks, how loudly it speaks, and its page with the reason, a wrong and a right example, and the fix. A `rules` definition in the folder changes a level, a line `allow RULE because "…"` silences one at a place.'

function factsOf({ code, level, source, since, fix, always }: Rule): string {
	const correction = { none: 'no fix', safe: 'a fix that changes nothing about the training', 'to confirm': 'a fix to confirm' }[
		fix
	]
	const fixed = always ? ', which cannot be changed' : ''
	return `\`${code}\`: ${level}${fixed} · ${correction} · since ${since} · source: ${source}`
}
