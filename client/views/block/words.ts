import * as l10n from '@vscode/l10n'

/** What the page of a block says. */
export const blockWords = {
	asks: l10n.t('What it asks of a lifter'),
	targets: l10n.t('Is for'),
	answers: l10n.t('Answers'),
	gates: l10n.t('Gates'),
	bests: l10n.t('Bests'),
	equipment: l10n.t('Equipment'),
	bodyweight: l10n.t('Bodyweight'),
	bodyweightFor: l10n.t('loads count from it'),
	nothing: l10n.t('Nothing but time.'),
	gateBefore: (titles: string, week: string) => l10n.t`before ${titles}, week ${week}`,
	gateOfBlock: l10n.t('before its first day'),
	gateReached: (week: string) => l10n.t`its own sets get there in week ${week}, if done as written`,
	bestFor: (titles: string) => l10n.t`loads of ${titles}`,
	base: l10n.t('a working base of it is enough'),
	equipmentFor: (titles: string) => l10n.t`for ${titles}`,
	day: (number: string) => l10n.t`Day ${number}`,
	anyDay: l10n.t('Any day'),
	part: { morning: l10n.t('morning'), evening: l10n.t('evening') },
} as const
