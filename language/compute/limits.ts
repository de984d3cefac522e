import type { Limits } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { Fact } from '../model/text.ts'

/** The facts that a `limits` definition may state. */
const factNames = [
	'loadRise',
	'volumeRise',
	'lighterWeekEvery',
	'heavy',
	'heavyHingeAndSquat',
	'sessionSeconds',
	'bestsWeeks',
	'gatesWeeks',
	'noSetAbove',
	'muscleSets',
	'estimator',
	'deviation',
] as const
type FactName = (typeof factNames)[number]

/** A fact of a `limits` definition, and where it stands. */
export interface Limit<T> extends Fact<T> {
	readonly definition: Limits
	/** For messages: "limits house" where the coach wrote it, else where the built-in number comes from ("common practice"). */
	readonly origin: string
}

type ValueOf<F> = NonNullable<F> extends Fact<infer T> ? T : never

/** What holds, fact by fact; `undefined` where no definition says anything. */
export type MergedLimits = { readonly [F in FactName]: Limit<ValueOf<Limits[F]>> | undefined }

/**
 * The limits that hold for a lifter, or for nobody in particular: each fact from the first definition that states it, the workspace's
 * before the built-in ones. No `limits` names a lifter or a team yet, so they are the same for all.
 */
export function limitsFor(_lifter: string | undefined, programme: Programme): MergedLimits {
	const merged: Partial<Record<FactName, Limit<unknown>>> = {}
	for (const definition of programme.limits()) {
		const origin = programme.isBuiltIn(definition)
			? (definition.source?.text ?? 'common practice')
			: `limits ${definition.name.text}`
		for (const name of factNames) {
			const fact = definition[name]
			if (fact !== undefined) merged[name] ??= { ...fact, definition, origin }
		}
	}
	return merged as MergedLimits
}
