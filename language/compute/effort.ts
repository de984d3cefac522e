import type { Exact } from '../model/quantities.ts'
import { exact } from './exact.ts'

/**
 * Reps in reserve. A rating E of perceived exertion means 10 − E reps left; half points are read as half reps.
 *
 * Source: Zourdos et al. 2016, J Strength Cond Res 30(1):267-275; half points from memory.
 */
export function reserveOf(effort: { readonly scale: 'rpe' | 'rir'; readonly value: Exact }): Exact {
	return effort.scale === 'rir' ? effort.value : exact(10).sub(effort.value)
}
