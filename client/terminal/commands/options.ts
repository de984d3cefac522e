import { InvalidArgumentError, Option } from 'commander'
import { isRealDate } from '../../../language/compute/calendar.ts'

/** Options that several commands have. */

/** Which folder is read. */
export function workspaceOption(): Option {
	return new Option('--workspace <folder>', 'the folder whose texts are read, with all below it; else the current folder')
}

/** How the result is written; the first is what is written where nothing is said. */
export function formatOption(...formats: readonly [string, ...string[]]): Option {
	return new Option('--format <kind>', 'how the result is written').choices(formats).default(formats[0])
}

/** Where the result is written. */
export function outOption(): Option {
	return new Option(
		'--out <file>',
		"write the result into a file; into a folder, each member's of a team's plan into one of its own",
	)
}

export function readDate(text: string): string {
	if (isRealDate(text)) return text
	throw new InvalidArgumentError('A date is written like 2026-10-05.')
}

/** A number of a week, from 1. */
export function readWeek(text: string): number {
	if (/^[1-9]\d{0,3}$/.test(text)) return Number(text)
	throw new InvalidArgumentError('Weeks are counted 1, 2, 3 …')
}
