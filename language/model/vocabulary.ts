/** The closed word lists of the language (common practice). */

export const muscles = [
	'quads',
	'hamstrings',
	'glutes',
	'adductors',
	'calves',
	'erectors',
	'upper-back',
	'lats',
	'traps',
	'abdominals',
	'obliques',
	'chest',
	'front-delts',
	'side-delts',
	'rear-delts',
	'triceps',
	'biceps',
	'forearms',
	'hip-flexors',
	'neck',
] as const

export const patterns = [
	'hinge',
	'squat',
	'single-leg',
	'press',
	'push-up',
	'row',
	'pull',
	'carry',
	'brace',
	'jump',
	'throw',
	'conditioning',
	'other',
] as const

/** Which link of the chain is trained: holding position under load, or moving the load. */
export const links = ['stability', 'drive'] as const
export type Link = (typeof links)[number]

export const roles = ['main', 'accessory', 'warm-up', 'conditioning', 'test'] as const
export type Role = (typeof roles)[number]

/** How a one-rep max is estimated: a published formula, or a published percent table. */
export const estimators = ['epley', 'brzycki', 'lander', 'lombardi', 'mayhew', 'oconner', 'wathan', 'chart', 'textbook'] as const
export type Estimator = (typeof estimators)[number]

export const deviations = ['population', 'sample'] as const
export type Deviation = (typeof deviations)[number]

export const levels = ['off', 'hint', 'info', 'warning', 'error'] as const
/** How loudly a rule speaks; `off` is silence. */
export type Level = (typeof levels)[number]
