import { type ConnectionOptions, LSPErrorCodes } from 'vscode-languageserver'

/** A question that is taken back before its turn is answered as such, and not worked on: fast typing takes back more than it waits for. */
export const connectionOptions: ConnectionOptions = {
	connectionStrategy: {
		cancelUndispatched: ({ jsonrpc }) => ({
			jsonrpc,
			id: null,
			error: { code: LSPErrorCodes.RequestCancelled, message: 'The question was taken back.' },
		}),
	},
}
