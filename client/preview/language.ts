import * as l10n from '@vscode/l10n'

// The extension puts the words of the editor's language into the page: before anything else of it is made, since that takes its words
// when it is loaded. Without them, the page speaks English.
const words = document.getElementById('preview')?.dataset.words
if (words !== undefined) l10n.config({ contents: words })
