import * as l10n from '@vscode/l10n'

/** What the gate timeline says. */
export const gateWords = {
	heading: l10n.t('Gates'),
	about: l10n.t(
		'What must have been shown before a movement or a block begins: where it was passed, and where it is needed, by week of the plan.',
	),
	passed: l10n.t('passed'),
	planned: l10n.t('reached by the plan, if done as written'),
	open: l10n.t('open'),
	due: l10n.t('needed'),
	before: l10n.t('before'),
	gate: l10n.t('Gate'),
	neededFor: l10n.t('Needed for'),
	state: l10n.t('State'),
	blockItself: (block: string) => l10n.t`the block ${block}`,
	neededOn: (date: string) => l10n.t`by ${date}`,
	passedOn: (date: string) => l10n.t`passed on ${date}`,
	passedBefore: l10n.t('passed'),
	shownBy: { passed: '', logged: l10n.t(', by the log'), best: l10n.t(', by a best') },
	plannedOn: (date: string) => l10n.t`not yet; the plan gets there on ${date}, if done as written`,
	openState: l10n.t('open'),
	nearest: (what: string) => l10n.t`the most so far is ${what}`,
	nearestOn: (what: string, date: string) => l10n.t`the most so far is ${what} on ${date}`,
	toText: l10n.t('Show it in the text'),
	source: (source: string) => `(${source})`,
} as const
