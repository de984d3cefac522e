import type { DefinitionKind } from '../model/definitions.ts'
import block from './block.md'
import breakdown from './breakdown.md'
import exceptions from './exceptions.md'
import gym from './gym.md'
import lifter from './lifter.md'
import limits from './limits.md'
import log from './log.md'
import movement from './movement.md'
import pasted from './pasted.md'
import plan from './plan.md'
import begin from './README.md'
import sets from './sets.md'
import words from './words.md'

/** The reference of the language, by file name; `README.md` is where it begins. */
export const referencePages: Readonly<Record<string, string>> = {
	'README.md': begin,
	'gym.md': gym,
	'lifter.md': lifter,
	'movement.md': movement,
	'breakdown.md': breakdown,
	'block.md': block,
	'sets.md': sets,
	'plan.md': plan,
	'log.md': log,
	'limits.md': limits,
	'exceptions.md': exceptions,
	'words.md': words,
	'pasted.md': pasted,
}

export interface Entry {
	/** The page that it stands on. */
	readonly page: string
	readonly title: string
	/** What a link to its heading ends with. */
	readonly anchor: string
	/** The rules of the grammar that it is about. */
	readonly forms: readonly string[]
	/** The first paragraph below the heading. */
	readonly lead: string
	/** What its table and its list say of one way of writing each. */
	readonly ways: readonly Way[]
	/** The lines of its examples. */
	readonly examples: readonly string[]
}

/** One way of writing a form, and what it means. */
export interface Way {
	/** The ways of writing that it is about: "at 100 kg", "at 90-100 lb". */
	readonly written: readonly string[]
	/** A sentence, or what would stand behind a colon, with the ways of writing in it. */
	readonly text: string
}

/**
 * The entry about a form, by the name of its grammar rule, which stands in a comment below the heading. Where lines of several kinds share the
 * form it is the one on the page about `kind`, if there is one.
 */
export function entryAbout(form: string, kind?: DefinitionKind): Entry | undefined {
	const found = entriesByForm().get(form)
	return found?.find(entry => entry.page === `${kind}.md`) ?? found?.[0]
}

let known: ReadonlyMap<string, readonly Entry[]> | undefined

/** Read from the pages once, when the first of them is asked for. */
function entriesByForm(): ReadonlyMap<string, readonly Entry[]> {
	if (known) return known
	const found = new Map<string, Entry[]>()
	for (const entry of Object.entries(referencePages).flatMap(([page, text]) => entriesOf(page, text)))
		for (const form of entry.forms) found.set(form, [...(found.get(form) ?? []), entry])
	known = found
	return found
}

function entriesOf(page: string, text: string): Entry[] {
	return text.split(/^(?=#+ )/m).flatMap(section => {
		const [, title, forms, body] = /^#+ (.*)\n+<!-- ([\w ]+) -->\n+([\s\S]*)/.exec(section) ?? []
		if (title === undefined || forms === undefined || body === undefined) return []
		const fences = [...body.matchAll(/^```stave\n([\s\S]*?)^```/gm)].map(([, lines]) => lines!)
		const prose = body.replace(/^```[\s\S]*?^```/gm, '')
		return {
			page,
			title,
			anchor: anchorOf(title),
			forms: forms.split(' '),
			lead: inOneLine(/^.*(?:\n.+)*/.exec(prose)![0]),
			ways: [...prose.matchAll(/^\| (`.*`) +\| (.*?) +\|$|^- (`[^`]+`(?:, `[^`]+`)*)(.*(?:\n {2}.*)*)/gm)].map(
				([, cell, means, words, rest]) => ({
					written: [...(cell ?? words)!.matchAll(/`([^`]+)`/g)].map(([, one]) => one!),
					text: inOneLine(cell === undefined ? `${words}${rest}` : `${cell}: ${means}`),
				}),
			),
			examples: fences.flatMap(fence => fence.split('\n').map(line => line.replace(/\/\/.*|\/\*.*?\*\//g, '').trim())),
		}
	})
}

function inOneLine(text: string): string {
	return text.replace(/\s+/g, ' ').trim()
}

/** Every word of the language, as the index has them. */
export const indexedWords: readonly string[] = [...words.matchAll(/^- `([^`]+)`: /gm)].map(([, word]) => word!)

/** The sections about a word of the language, heading and all: those that are called so, else those that the index names. */
export function sectionsAbout(word: string): string[] {
	const sections = Object.entries(referencePages).flatMap(([page, text]) =>
		text
			.split(/^(?=#+ )/m)
			.map(section => ({ page, section, title: /^#+ (.*)/.exec(section)?.[1] ?? '' }))
			.filter(({ title }) => title !== ''),
	)
	const called = sections.filter(({ title }) => [...title.matchAll(/`([^`]+)`/g)].some(([, words]) => words === word))
	const indexed = words.split('\n').find(line => line.startsWith(`- \`${word}\`: `)) ?? ''
	const named = sections.filter(({ page, title }) => indexed.includes(`(${page}#${anchorOf(title)})`))
	return (called.length > 0 ? called : named).map(({ section }) => section)
}

/** The anchor that code hosts and editors give a heading. */
export function anchorOf(title: string): string {
	return title
		.toLowerCase()
		.replace(/[^\p{L}\p{N} _-]/gu, '')
		.replaceAll(' ', '-')
}
