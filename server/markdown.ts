import type { Description } from '../language/reports/description.ts'

/** Plain text inside Markdown: nothing in it is a link, an image, a tag or a heading. */
export function escaped(text: string): string {
	return text.replace(/[\\`*_{}[\]()#+\-.!|<>&~]/g, '\\$&').replace(/\s+/g, ' ')
}

/** A description as an editor shows it. */
export function asMarkdown({ heading, facts, notes, source, caution, builtIn }: Description): string {
	const lines = [`**${escaped(heading)}**`]
	if (caution) lines.push(`**Caution:** ${escaped(caution)}`)
	for (const note of notes) lines.push(escaped(note))
	if (facts.length > 0) lines.push(facts.map(({ label, text }) => `${escaped(label)}: ${escaped(text)}`).join('  \n'))
	const origin = [source && `Source: ${escaped(source)}`, builtIn && 'Built in'].filter(Boolean).join(' · ')
	if (origin) lines.push(`_${origin}_`)
	return lines.join('\n\n')
}
