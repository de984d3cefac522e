import { Hindrance } from './hindrance.mjs'
import { tool } from './tool.mjs'

/** Makes the parser and the types of the tree from the grammar. */
export async function generate() {
	if ((await tool('langium', 'generate')) !== 0) throw new Hindrance('The grammar does not generate.')
}
