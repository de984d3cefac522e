/** The server runs on the Node that is part of the editor, and its parser needs this one. */
export const oldestNode = 22

/** Editors that follow VS Code 1.101 have a Node that will do; some that carry that number do not. */
export function isTooOld(node: string): boolean {
	return Number.parseInt(node, 10) < oldestNode
}
