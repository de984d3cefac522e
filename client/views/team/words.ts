import * as l10n from '@vscode/l10n'

/** What the page of a team says. */
export const teamWords = {
	heading: l10n.t('Team'),
	today: (date: string) => l10n.t`today is ${date}`,
	now: l10n.t('Who is in which week'),
	weeks: l10n.t('Week by week'),
	member: l10n.t('Member'),
	plan: l10n.t('Plan'),
	thisWeek: l10n.t('this week'),
	thisWeekHead: l10n.t('This week'),
	next: l10n.t('Next meet'),
	problems: l10n.t('Problems'),
	noProblems: l10n.t('none'),
	noPlan: l10n.t('no plan'),
	noWeeks: l10n.t('no session has a date yet'),
	between: l10n.t('no session'),
	begins: (date: string) => l10n.t`begins in the week of ${date}`,
	ended: (date: string) => l10n.t`ended in the week of ${date}`,
	meetIn: (weeks: string) => l10n.t`in ${weeks}`,
	weekOf: (week: string, of: string) => l10n.t`week ${week} of ${of}`,
	lighter: l10n.t('lighter week'),
	meet: l10n.t('Meet'),
	showPlan: (title: string) => l10n.t`Show the plan ${title}`,
	concerns: (names: string) => l10n.t`concerns ${names}`,
	empty: l10n.t('No member has a plan yet.'),
	nobody: l10n.t('This team has no members yet.'),
	weeksAbout: l10n.t(
		'A column for each calendar week, by its monday; the number is the week of the block. Who is in the same weeks stands in one row.',
	),
} as const
