import { styleText } from 'node:util'
import type { ShownLevel } from '../../../language/model/problem.ts'

/** How text is set off on a terminal; without colours every function gives its text back as it is. */
export interface Style {
	strong(text: string): string
	quiet(text: string): string
	heading(text: string): string
	level(level: ShownLevel, text: string): string
	good(text: string): string
	/** A stretch of a training text within a sentence. */
	written(text: string): string
}

const colourOf = { error: 'red', warning: 'yellow', info: 'cyan', hint: 'gray' } as const

export function styleFor(colours: boolean): Style {
	const set = (format: Parameters<typeof styleText>[0]) => (text: string) =>
		// The caller has judged the stream; judging standard output again would be wrong for standard error.
		colours ? styleText(format, text, { validateStream: false }) : text
	return {
		strong: set('bold'),
		quiet: set('dim'),
		heading: set(['bold', 'underline']),
		level: (level, text) => set(level === 'hint' ? colourOf.hint : ['bold', colourOf[level]])(text),
		good: set('green'),
		written: text => (colours ? set('cyan')(text) : `"${text}"`),
	}
}
