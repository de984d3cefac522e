import { type ConnectionOptions, LSPErrorCodes, Message, type MessageStrategy } from 'vscode-languageserver'

/** A question that the protocol does not allow any more: no feature has it, so that it is refused by name. */
export const refusedQuestion = 'barstave/refused'

/** How one server listens to its editor. */
export function connectionOptions(): ConnectionOptions {
	return {
		connectionStrategy: {
			// A question that is taken back before its turn is answered as such, and not worked on: fast typing takes back more than it waits for.
			cancelUndispatched: ({ jsonrpc }) => ({
				jsonrpc,
				id: null,
				error: { code: LSPErrorCodes.RequestCancelled, message: 'The question was taken back.' },
			}),
		},
		messageStrategy: onceFromBeginningToEnd(),
	}
}

/** An editor begins once, and asks nothing after it has said that it ends. */
function onceFromBeginningToEnd(): MessageStrategy {
	let isBegun = false
	let isEnded = false
	return {
		handleMessage(message, next) {
			if (!Message.isRequest(message)) return next(message)
			const isRefused = isEnded || (isBegun && message.method === 'initialize')
			if (message.method === 'initialize') isBegun = true
			if (message.method === 'shutdown') isEnded = true
			return next(isRefused ? { ...message, method: refusedQuestion } : message)
		},
	}
}
