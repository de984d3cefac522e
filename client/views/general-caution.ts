import * as l10n from '@vscode/l10n'

/** Stands under everything that a lifter may train from: on pages and on the terminal. */
export const generalCaution = l10n.t(
	'A planning aid for coaches, no medical advice. Stop and refer on pain or symptoms; local rules and licensed practice come first.',
)
