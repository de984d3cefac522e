import * as l10n from '@vscode/l10n'
import type { Subject } from '../../language/reports/preview.ts'

/** What the panel itself says, around the views. */
export const panelWords = {
	shown: l10n.t('Shown'),
	pick: l10n.t('Pick what to show'),
	follow: l10n.t('Follow the cursor'),
	stale: l10n.t('What cannot be read is shown as it last was.'),
	choice(kind: Subject['kind'], title: string, lifterTitle: string | null): string {
		switch (kind) {
			case 'plan':
				return lifterTitle === null ? title : `${lifterTitle} · ${title}`
			case 'block':
				return l10n.t`Block · ${title}`
			case 'team':
				return l10n.t`Team · ${title}`
			case 'log':
				return l10n.t`Log · ${title}`
		}
	},
	waiting: l10n.t('Reading the plans…'),
	nothingYet: l10n.t('No plan yet'),
	nothingYetHelp: l10n.t('A plan puts blocks on a calendar for one lifter. Write one like this, and its sheet appears here:'),
	which: l10n.t('Which plan?'),
	whichHelp: l10n.t('Pick one above, or open a file that a plan uses.'),
} as const
