import { InvalidArgumentError, Option } from 'commander'
import { isRealDate } from '../../../language/compute/calendar.ts'
import type { BeginTime } from '../../outputs/begin-times.ts'
import { type BeginFault, readBeginTimes } from '../../outputs/read-begin-times.ts'

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

/** When sessions begin. */
export function readBegin(text: string): readonly BeginTime[] {
	const read = readBeginTimes(text)
	if ('times' in read) return read.times
	throw new InvalidArgumentError(whyNoTimes(read.fault, text))
}

/** The whole of what was written stands before it, and is not said again. */
function whyNoTimes(fault: BeginFault, all: string): string {
	const { written } = fault
	const isAll = written.trim() === all.trim()
	if (fault.kind === 'twice') return `"${fault.other}" and "${written}" are for the same sessions: keep one of them.`
	if (fault.meant.length > 0)
		return `Write ${fault.meant.map(one => `"${one}"`).join(' or ')}${isAll ? '' : ` instead of "${written}"`}.`
	const form = 'A time is written like 17:30, from 0:00 to 23:59; before it may stand a weekday, "morning" or "evening".'
	return isAll ? form : `"${written}" is no time. ${form}`
}
