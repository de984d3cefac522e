import type { TextFile } from '../../language/workspace/text-file.ts'
import type { Workspace } from '../workspace.ts'

/** Is it a place where nothing is the language's to say? */
export function isInTextOrComment(workspace: Workspace, file: TextFile, offset: number): boolean {
	const { tokens, hidden } = workspace.reader.tokenize(file.text)
	const holds = (token: { startOffset: number; endOffset?: number }, closed: boolean) =>
		token.startOffset < offset && offset <= (token.endOffset ?? token.startOffset) + (closed ? 0 : 1)
	return (
		hidden.some(token => holds(token, token.tokenType.name === 'BLOCK_COMMENT')) ||
		tokens.some(token => token.tokenType.name.endsWith('STRING') && holds(token, token.tokenType.name !== 'UNCLOSED_STRING'))
	)
}
