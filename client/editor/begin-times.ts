import { commands, env, l10n, window, workspace } from 'vscode'
import type { BeginTime } from '../outputs/begin-times.ts'
import { type BeginFault, readBeginTimes } from '../outputs/read-begin-times.ts'

const section = 'barstave'
const setting = 'calendar.begin'

/** When sessions begin, as the settings say it. `fault` tells the person why they say nothing; `null` where all is well. */
export interface SaidTimes {
	readonly times: readonly BeginTime[]
	readonly fault: string | null
}

/** Settings are written by hand, in a file too: whatever stands there, there is an answer. */
export function timesInSettings(): SaidTimes {
	const value = workspace.getConfiguration(section).get<unknown>(setting) ?? ''
	const text = typeof value === 'string' ? value : JSON.stringify(value)
	if (text.trim() === '') return { times: [], fault: null }
	const read = readBeginTimes(text)
	return 'times' in read ? { times: read.times, fault: null } : { times: [], fault: why(read.fault) }
}

function why(fault: BeginFault): string {
	if (fault.kind === 'twice')
		return l10n.t('In the settings "{0}" and "{1}" are for the same sessions: keep one of them.', fault.other, fault.written)
	if (fault.meant.length > 0) {
		const meant = new Intl.ListFormat(env.language, { type: 'disjunction' }).format(fault.meant.map(one => `"${one}"`))
		return l10n.t('In the settings write {0} instead of "{1}".', meant, fault.written)
	}
	return l10n.t(
		'In the settings "{0}" is no time: it is written like 17:30, from 0:00 to 23:59, or "saturday 10:00, evening 18:30".',
		fault.written,
	)
}

/** Says that a calendar is there, and that its sessions have no times. */
export async function tellThatTimesAreMissing(file: string, fault: string): Promise<void> {
	const openSettings = l10n.t('Open the settings')
	const message = l10n.t('"{0}" is written, but every session in it takes the whole day. {1}', file, fault)
	if ((await window.showWarningMessage(message, openSettings)) === openSettings)
		await commands.executeCommand('workbench.action.openSettings', `${section}.${setting}`)
}
