import type { TextDocument, TextEditor } from 'vscode'

export function isOurText({ languageId }: TextDocument): boolean {
	return languageId === 'barstave'
}

/** Does an editor show one of our texts? */
export function isOurs(editor: TextEditor | undefined): editor is TextEditor {
	return editor !== undefined && isOurText(editor.document)
}

/** A text of somebody's in places where the editor draws `$(name)` as a picture. */
export function withoutIcons(text: string): string {
	return text.replaceAll('$(', '\\$(')
}
