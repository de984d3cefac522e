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
	/** The first paragraph below it. */
	readonly lead: string
}

/** The entry about a form, by the name of its grammar rule, which stands in a comment below the heading. */
export function entryAbout(form: string): Entry | undefined {
	for (const [page, text] of Object.entries(referencePages)) {
		const found = new RegExp(`^#+ (.*)\\n+<!--[\\w ]* ${form} [\\w ]*-->\\n+((?:[^\\n]+\\n)*)`, 'm').exec(text)
		const title = found?.[1]
		if (title !== undefined) return { page, title, anchor: anchorOf(title), lead: found?.[2]?.replace(/\n/g, ' ').trim() ?? '' }
	}
	return undefined
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
