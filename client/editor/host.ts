const oldestNode = 22

/**
 * Why the server cannot run in this editor, in words, or `undefined`. The server runs on the Node that is part of the editor, and its
 * parser needs Node 22. Editors that follow VS Code 1.101 have it; some that carry that number do not.
 */
export function hindranceOfHost(node: string): string | undefined {
	if (Number.parseInt(node, 10) >= oldestNode) return undefined
	return `Barstave cannot check texts in this editor: it is built on Node ${node}, and Barstave needs Node ${oldestNode} or later. A newer version of the editor will do.`
}
