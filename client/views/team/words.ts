import * as l10n from '@vscode/l10n'

/** What the page of a team says. */
export const teamWords = {
	heading: l10n.t('Team'),
	members: (count: string) => `${count}`,
	today: (date: string) => l10n.t`today is ${date}`,
	weeks: l10n.t('Who is in which week'),
	member: l10n.t('Member'),
	plan: l10n.t('Plan'),
	now: l10n.t('this week'),
	noPlan: l10n.t('no plan'),
	problems: l10n.t('Problems'),
	noProblems: l10n.t('none'),
	between: l10n.t('no session'),
	weekOf: (week: string, of: string) => l10n.t`week ${week} of ${of}`,
	lighter: l10n.t('lighter week'),
	meet: l10n.t('Meet'),
	showPlan: (title: string) => l10n.t`Show the plan ${title}`,
	openProblems: l10n.t('Open problems'),
	concerns: (names: string) => l10n.t`concerns ${names}`,
	empty: l10n.t('No member has a plan yet.'),
	tableAbout: l10n.t('A row for each plan, a column for each calendar week; the number is the week of the block.'),
} as const
