import { createConnection, ProposedFeatures } from 'vscode-languageserver/node'
import { clientFiles, filesByScheme } from './files-client.ts'
import { nodeFiles } from './files-node.ts'
import { startServer } from './server.ts'

// How to talk (`--stdio`, `--node-ipc`) stands in the arguments that the editor gives.
const connection = createConnection(ProposedFeatures.all)
startServer(connection, filesByScheme('file', nodeFiles, clientFiles(connection)))
