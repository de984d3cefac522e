import type { TextEditor } from 'vscode'

/** Does an editor show one of our texts? */
export function isOurs(editor: TextEditor | undefined): editor is TextEditor {
	return editor?.document.languageId === 'barstave'
}

/** A text of somebody's in places where the editor draws `$(name)` as a picture. */
export function withoutIcons(text: string): string {
	return text.replaceAll('$(', '\\$(')
}
