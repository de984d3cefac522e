import { createConnection, ProposedFeatures } from 'vscode-languageserver/node'
import { connectionOptions } from './connection-options.ts'
import { clientFiles, filesByScheme } from './files-client.ts'
import { nodeFiles } from './files-node.ts'
import { startServer } from './server.ts'

// How to talk (`--stdio`, `--node-ipc`) stands in the arguments that the editor gives.
const connection = createConnection(ProposedFeatures.all, connectionOptions())
startServer(connection, filesByScheme('file', nodeFiles, clientFiles(connection)))
