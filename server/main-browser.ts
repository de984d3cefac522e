import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser'
import { clientFiles } from './files-client.ts'
import { startServer } from './server.ts'

// Runs in a worker beside an editor in the browser; all files come from that editor.
const connection = createConnection(new BrowserMessageReader(self), new BrowserMessageWriter(self))
startServer(connection, clientFiles(connection))
