import type { FileProblem } from '../../language/workspace/file-problems.ts'
import type { Folder } from '../../language/workspace/folder.ts'
import type { TextFile } from '../../language/workspace/text-file.ts'
import type { ServerContext } from '../feature.ts'

/** What an editor asks for: what can be done at a stretch of a text. */
export interface Request {
	readonly context: ServerContext
	readonly folder: Folder
	readonly file: TextFile
	/** Offsets in the text. */
	readonly from: number
	readonly to: number
	/** Those that touch the stretch. */
	readonly problems: readonly FileProblem[]
}
