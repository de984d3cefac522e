import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser'
import { connectionOptions } from './connection-options.ts'
import { clientFiles } from './files-client.ts'
import { startServer } from './server.ts'

// Runs in a worker beside an editor in the browser; all files come from that editor.
const connection = createConnection(new BrowserMessageReader(self), new BrowserMessageWriter(self), connectionOptions())
startServer(connection, clientFiles(connection))
