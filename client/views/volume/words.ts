import * as l10n from '@vscode/l10n'

/** What the weekly charts say. */
export const volumeWords = {
	heading: l10n.t('Weekly volume'),
	week: l10n.t('Week'),
	lighter: l10n.t('lighter week'),
	lighterColumn: l10n.t(', lighter'),
	numbers: l10n.t('Numbers'),
	numbersOf: (title: string) => l10n.t`of ${title}`,
	needs: (amount: string) => l10n.t`needs ${amount}`,

	links: l10n.t('Stability and drive'),
	linksAbout: l10n.t('Hard sets a week, by the link of the chain that a movement trains first.'),
	stability: l10n.t('stability'),
	drive: l10n.t('drive'),
	seconds: l10n.t('Time under tension'),
	secondsAbout: l10n.t('Minutes and seconds a week: reps by their tempo, or holds.'),
	muscles: l10n.t('Hard sets a muscle'),
	musclesAbout: l10n.t('Sets a week, each by its share: 1 where a muscle does the work, a half where it assists.'),
	sets: l10n.t('sets'),
	lift: (work: string, unit: string | null) =>
		unit === null
			? l10n.t`${work} below, percent of the reference above.`
			: l10n.t`${work} in ${unit} below, percent of the reference above.`,
	top: l10n.t('heaviest set'),
	intensity: l10n.t('average intensity'),
	zones: (lift: string) => l10n.t`${lift}: lifts by intensity`,
	zonesAbout: l10n.t(
		"Number of lifts a week by percent of the reference. Zones as in Prilepin's table, as two later copies give it.",
	),
	zonesUnder: (percent: string) => l10n.t`under ${percent}`,
	zonesFrom: (percent: string) => l10n.t`${percent} and more`,

	uncounted: l10n.t('sets that do not count for the need'),
	neededFor: l10n.t('needed for'),
	highEnd: l10n.t('where the high end is done'),
	leftOut: (parts: string) => l10n.t`Not in the totals, because their load or length cannot be known – ${parts}.`,
	leftOutWeek: (week: string, sets: string) => l10n.t`week ${week}: ${sets}`,
	leftOutWeeks: (sets: string, weeks: string) => l10n.t`${sets} sets a week in ${weeks}`,
	weeksOfPlan: l10n.t('The numbers below each chart are the weeks of the plan.'),
	weeksOfBlock: l10n.t('The numbers below each chart are the weeks of the block.'),

	caps: l10n.t('Days a week against the limit'),
	capsAbout: l10n.t(
		'Days with a movement that its definition limits, over all plans of the lifter. What counts stands at each name.',
	),
	capsAboutBlock: l10n.t(
		'Days with a movement that its definition limits, in this block alone. What counts stands at each name.',
	),
	capFrom: (title: string, percent: string) => l10n.t`${title} from ${percent}`,
	atMost: (sessions: string) => l10n.t`at most ${sessions} a week`,
	days: l10n.t('days'),
	over: l10n.t('over the limit'),
	limit: l10n.t('limit'),
	allDays: (name: string) => name,
	limitOf: (name: string) => l10n.t`${name}, limit`,
	limitFrom: (name: string, source: string) => `${name}: ${source}`,
	tonnage: l10n.t('Tonnage'),
	relative: l10n.t('Sets × reps × percent'),
	tonnageKey: l10n.t('tonnage'),
	relativeKey: l10n.t('sets × reps × percent'),
	average: l10n.t('Average intensity'),
	heaviest: l10n.t('Heaviest set'),
	allOfThem: l10n.t('Sets'),
	reps: l10n.t('Reps'),
	link: { stability: l10n.t('Stability'), drive: l10n.t('Drive') },
	sessionsAnswering: (name: string) => l10n.t`${name}, sessions answering`,
	sessionsNeeded: (name: string) => l10n.t`${name}, sessions needed`,
	allSets: (name: string) => l10n.t`${name}, all sets`,
	answering: (name: string) => l10n.t`${name}, answering`,
	needed: (name: string) => l10n.t`${name}, needed`,
	limitsSource: l10n.t('Where the limits come from'),
} as const
