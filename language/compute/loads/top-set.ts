import type { PlannedLoad } from '../../model/schedule.ts'

/** `at 92% of top set`: the load waits for another set of its item. */
export function isOfTopSet(load: PlannedLoad): load is PlannedLoad & { readonly kind: 'percent'; readonly of: 'top-set' } {
	return load.kind === 'percent' && load.of === 'top-set'
}
