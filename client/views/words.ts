import * as l10n from '@vscode/l10n'

/** What stands around the parts of a page: its facts, the ways to its parts, and its problems. */
export const pageWords = {
	parts: l10n.t('Parts of this page'),
	asks: l10n.t('What it asks'),
	calendar: l10n.t('Calendar'),
	sheet: l10n.t('Week by week'),
	volume: l10n.t('Weekly volume'),
	gates: l10n.t('Gates'),
	problems: l10n.t('Open problems'),
	members: l10n.t('Members'),
	block: l10n.t('Block'),
	loadsIn: (unit: string) => l10n.t`loads in ${unit}`,
	inPercents: l10n.t('in percents of the best'),
	meet: l10n.t('Meet'),
	noProblems: l10n.t('no open problems'),
	none: l10n.t('None.'),
	week: l10n.t('Week'),
	weeks: l10n.t('Weeks'),
	lighter: l10n.t('lighter week'),
	meetToo: l10n.t('meet'),
	level: { error: l10n.t('error'), warning: l10n.t('warning'), info: l10n.t('note'), hint: l10n.t('hint') },
} as const
