import { readdirSync, readFileSync } from 'node:fs'
import { GrammarAST } from 'langium'
import { reservedWords } from '../../../../language/parser/words.ts'
import { TextReader } from '../../../../language/workspace/text-file.ts'
import { pathOf } from '../../rules/harness/markdown.ts'

export const reader = new TextReader()

/** The pages of the reference, and the forms of the grammar that they are about. */
export const folder = pathOf('language/reference')

export interface Entry {
	readonly page: string
	readonly title: string
	/** Rules of the grammar, from the comment below the heading. */
	readonly forms: readonly string[]
	readonly prose: string
	readonly examples: readonly Example[]
}

export interface Example {
	readonly text: string
	/** The whole text that it stands in, and where it begins there. */
	readonly whole: string
	readonly start: number
}

// Pages ---------------------------------------------------------------------------------------------------------------------------------

const handWritten = readdirSync(folder).filter(file => file.endsWith('.md') && file !== 'words.md' && file !== 'pasted.md')
export const entries: readonly Entry[] = handWritten.flatMap(page => entriesOf(page, readFileSync(`${folder}/${page}`, 'utf8')))

function entriesOf(page: string, markdown: string): Entry[] {
	let around = '…'
	return markdown.split(/^(?=#{1,2} )/m).map(section => {
		const title = /^#+ (.*)$/m.exec(section)?.[1] ?? ''
		const forms = /^<!-- ([\w ]+) -->$/m.exec(section)?.[1]?.split(' ') ?? []
		const examples: Example[] = []
		for (const [, text = ''] of section.matchAll(/^```stave\n([\s\S]*?)^```/gm)) {
			if (text.includes('…')) around = text
			else examples.push(placed(text, around))
		}
		const prose = section.replace(/^#+ .*$|^<!--.*-->$|^```[\s\S]*?^```$/gm, '').trim()
		return { page, title, forms, prose, examples }
	})
}

/** A whole definition stands by itself; lines stand where the text above them has its dots. */
export function placed(text: string, around: string): Example {
	if (reservedWords.has(/^[a-z]+/.exec(text.replace(/^\s*(\/\/.*\n)*/, ''))?.[0] ?? '')) return { text, whole: text, start: 0 }
	const start = around.indexOf('…')
	const indent = /(?:^|\n)( *)[^\n]*$/.exec(around.slice(0, start))![1]!
	const inset = text.trimEnd().replaceAll('\n', `\n${indent}`)
	return { text: inset, whole: around.replace('…', () => inset), start }
}

// Grammar -------------------------------------------------------------------------------------------------------------------------------

export const rules = reader.grammarServices.Grammar.rules.filter(GrammarAST.isParserRule)

/** A rule that only chooses between others, or is a part of others, has no entry. */
export function hasForm(rule: GrammarAST.ParserRule): boolean {
	const isChoice = GrammarAST.isAlternatives(rule.definition) && rule.definition.elements.every(GrammarAST.isRuleCall)
	const isPart = ['Prescription', 'Target'].includes(rule.name)
	return !isChoice && !isPart && !rule.fragment && rule.dataType === undefined
}
