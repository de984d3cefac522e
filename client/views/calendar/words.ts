import * as l10n from '@vscode/l10n'

/** What the calendar says. */
export const calendarWords = {
	heading: l10n.t('Calendar'),
	week: l10n.t('Week'),
	block: l10n.t('Block'),
	lighter: l10n.t('lighter week'),
	meet: l10n.t('Meet'),
	blockWeek: (week: string) => l10n.t`week ${week}`,
	pause: l10n.t('pause'),
	empty: l10n.t('no session'),
	between: (weeks: number) => l10n.t`${weeks} weeks without a session`,
	part: { morning: l10n.t('morning'), evening: l10n.t('evening') },
} as const
