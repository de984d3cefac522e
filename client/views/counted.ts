import * as l10n from '@vscode/l10n'

/** `1 session`, `2 sessions`: each in its own words, since languages form the plural in different ways. */
export const counted = {
	week: (count: number) => (count === 1 ? l10n.t('1 week') : l10n.t`${count} weeks`),
	session: (count: number) => (count === 1 ? l10n.t('1 session') : l10n.t`${count} sessions`),
	set: (count: number) => (count === 1 ? l10n.t('1 set') : l10n.t`${count} sets`),
	member: (count: number) => (count === 1 ? l10n.t('1 member') : l10n.t`${count} members`),
	error: (count: number) => (count === 1 ? l10n.t('1 error') : l10n.t`${count} errors`),
	warning: (count: number) => (count === 1 ? l10n.t('1 warning') : l10n.t`${count} warnings`),
	info: (count: number) => (count === 1 ? l10n.t('1 note') : l10n.t`${count} notes`),
	hint: (count: number) => (count === 1 ? l10n.t('1 hint') : l10n.t`${count} hints`),
} as const
