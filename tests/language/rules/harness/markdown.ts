import { existsSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { Rule } from '../../../../language/rules/rule.ts'
import type { Texts } from './workspace.ts'

/** A part of a page, from one heading to the next of its rank. */
export interface Section {
	readonly title: string
	readonly body: string
}

/** A case of a rule: a small workspace, with the marks in it. */
export interface Case {
	readonly title: string
	/** It begins with "Quiet:": nothing is reported. */
	readonly quiet: boolean
	readonly texts: Texts
	/** Codes that may be reported beside the point, from a line `also: code, code`. */
	readonly also: readonly string[]
}

const root = fileURLToPath(new URL('../../../../', import.meta.url))

export function pathOf(path: string): string {
	return `${root}${path}`
}

/** The cases that stand beside a rule, in `language/rules/<area>/<code>.cases.md`. */
export function casesOf(rule: Rule): readonly Case[] {
	const path = pathOf(`language/rules/${rule.area}/${rule.code}.cases.md`)
	// A rule without cases fails its own test, and no other's.
	return sectionsOf(existsSync(path) ? readFileSync(path, 'utf8') : '').map(({ title, body }) => ({
		title,
		quiet: title.startsWith('Quiet:'),
		texts: fencesOf(body),
		also: /^also: (.*)$/m.exec(body)?.[1]?.split(/, */) ?? [],
	}))
}

/** The parts under headings of the second rank. */
export function sectionsOf(markdown: string): readonly Section[] {
	return markdown
		.split(/^## /m)
		.slice(1)
		.map(part => {
			const end = part.indexOf('\n')
			return { title: part.slice(0, end).trim(), body: part.slice(end + 1) }
		})
}

/** The texts of the `stave` fences, by the path that the fence names; unnamed ones are numbered. */
export function fencesOf(markdown: string): Texts {
	const fences = [...markdown.matchAll(/^```stave *(\S*)\n([\s\S]*?)^```/gm)]
	return new Map(fences.map(([, path, text], index) => [path || `${index + 1}.stave`, text ?? '']))
}
