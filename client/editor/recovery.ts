import { CloseAction, ErrorAction, type ErrorHandler } from 'vscode-languageclient'

const patience = { stops: 5, within: 3 * 60_000 }

/**
 * What happens when the server stops by itself: it is started again, and the person is told the first time; where it keeps stopping, it is
 * left alone and the person is told what to do.
 */
export function recovery(now: () => number = Date.now): ErrorHandler {
	const stops: number[] = []
	let told = false
	return {
		error: () => ({ action: ErrorAction.Continue, handled: true }),
		closed: () => {
			stops.push(now())
			const recent = stops.filter(at => now() - at <= patience.within)
			if (recent.length >= patience.stops)
				return {
					action: CloseAction.DoNotRestart,
					message:
						'Barstave stopped several times within three minutes and is left alone now. The command "Barstave: Start checking again" starts it; the log says what happened.',
				}
			const handled = told
			told = true
			return { action: CloseAction.Restart, message: 'Barstave had stopped, and is checking again.', handled }
		},
	}
}
