import { createConnection, ProposedFeatures } from 'vscode-languageserver/node'
import { nodeFiles } from './files-node.ts'
import { startServer } from './server.ts'

// How to talk (`--stdio`, `--node-ipc`) stands in the arguments that the editor gives.
startServer(createConnection(ProposedFeatures.all), nodeFiles)
