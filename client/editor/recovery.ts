import { commands, l10n, window } from 'vscode'
import { CloseAction, ErrorAction, type ErrorHandler } from 'vscode-languageclient'

const patience = { stops: 5, within: 3 * 60_000 }

/**
 * What happens when the server stops by itself: it is started again, and the person is told the first time; where it keeps stopping, it is
 * left alone until the person starts it.
 */
export function recovery(): ErrorHandler {
	let stops: number[] = []
	let told = false
	return {
		error: () => ({ action: ErrorAction.Continue, handled: true }),
		closed: () => {
			const now = Date.now()
			stops = [...stops.filter(at => now - at <= patience.within), now]
			if (stops.length >= patience.stops) {
				stops = []
				void tellThatItIsLeftAlone()
				return { action: CloseAction.DoNotRestart, message: 'The server keeps stopping, and is left alone.', handled: true }
			}
			if (!told) void tellThatItGoesOn()
			told = true
			return { action: CloseAction.Restart, message: 'The server stopped, and is started again.', handled: true }
		},
	}
}

async function tellThatItGoesOn(): Promise<void> {
	const showLog = l10n.t('Show the log')
	const message = l10n.t('Barstave had stopped, and is checking again. Nothing is lost.')
	const choice = await window.showInformationMessage(message, showLog)
	if (choice === showLog) await commands.executeCommand('barstave.showLog')
}

async function tellThatItIsLeftAlone(): Promise<void> {
	const showLog = l10n.t('Show the log')
	const startAgain = l10n.t('Start checking again')
	const message = l10n.t('Barstave stopped five times within three minutes and is left alone now. Texts are not checked.')
	const choice = await window.showErrorMessage(message, startAgain, showLog)
	if (choice === showLog) await commands.executeCommand('barstave.showLog')
	if (choice === startAgain) await commands.executeCommand('barstave.restartServer')
}
