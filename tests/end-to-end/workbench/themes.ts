/** A theme of the editor: its title in the list of themes, and how the body of a webview tells its kind. */
export interface ThemeKind {
	readonly title: string
	readonly body: string
}

/** The editor's own themes, one a kind. */
export const themes = {
	light: { title: 'Light Modern', body: 'vscode-light' },
	dark: { title: 'Dark Modern', body: 'vscode-dark' },
	'high-contrast': { title: 'Dark High Contrast', body: 'vscode-high-contrast' },
	'high-contrast-light': { title: 'Light High Contrast', body: 'vscode-high-contrast-light' },
} as const satisfies Readonly<Record<string, ThemeKind>>

export type Theme = keyof typeof themes
