import type { Gym } from '../model/definitions.ts'
import type { ExactRange } from '../model/quantities.ts'
import type { ComputedLoad, LoadReference, PlannedItem, PlannedLoad, PlannedSet, ScheduledSet, Steps } from '../model/schedule.ts'
import { decimal, hundred, share } from './exact.ts'
import { exactLoad, type LoadOwner, referenceOf } from './loads/exact-load.ts'
import { loadable } from './loads/loadable.ts'
import { titleOf, type Unknown } from './loads/reference.ts'
import { isOfTopSet } from './loads/top-set.ts'
import { massRangeText, rangeText } from './loads/wording.ts'
import { massText } from './mass.ts'
import { firstMainItem } from './outline/warm-up.ts'

/** What the loads of an item depend on, beside what the block asks for. */
export interface LoadSetting extends LoadOwner {
	/** Where the lifter trains that day; `undefined`: with the usual bar and discs, and everything else there is. */
	readonly gym: Gym | undefined
	/** The movement stands in place of another: a load in kilograms was meant for that one. */
	readonly swappedFor: string | undefined
}

/** An item with the loads of its sets. */
type Loaded<T extends PlannedItem> = Omit<T, 'sets'> & { readonly sets: readonly ScheduledSet[] }

/**
 * The loads of a session's items: exact, then what can be put on the bar, with the way of each. Shares of a top set wait for the other
 * sets of their item, computed warm-ups for the first main item.
 */
export function withLoads<T extends PlannedItem>(items: readonly T[], settingOf: (item: T) => LoadSetting): readonly Loaded<T>[] {
	const loaded = items.map((item): Loaded<T> => ({ ...item, sets: setsWithLoads(item, settingOf(item)) }))
	const main = firstMainItem(loaded)
	return loaded.map((item, index) => {
		const written = items[index]
		if (written?.from !== 'computed-warm-up') return item
		return { ...item, sets: item.sets.map(set => warmUpSet(set, main, settingOf(written))) }
	})
}

function setsWithLoads(item: PlannedItem, setting: LoadSetting): readonly ScheduledSet[] {
	const reference = referenceOf(setting)
	// Sets of one group share their load.
	const known = new Map<PlannedLoad, ComputedLoad>()
	const first = item.sets.map((written): ScheduledSet => {
		const set: PlannedSet = setting.swappedFor !== undefined && isFixed(written.load) ? { ...written, load: nothing } : written
		const computed = known.get(written.load) ?? ownLoad(set, written, setting, reference)
		known.set(written.load, computed)
		return { ...set, computed }
	})
	const top = heaviest(first)
	const ofTop = new Map<PlannedLoad, ComputedLoad>()
	return first.map(set => {
		if (!isOfTopSet(set.load)) return set
		const computed = ofTop.get(set.load) ?? ofTopSet(set.load, top, setting, reference)
		ofTop.set(set.load, computed)
		return { ...set, computed }
	})
}

const nothing: PlannedLoad = { kind: 'none' }

/** Kilograms, pounds or a share of the bodyweight, which a swap to another movement does not take over. */
function isFixed(load: PlannedLoad): boolean {
	return (
		load.kind === 'mass' ||
		load.kind === 'of-bodyweight' ||
		(load.kind === 'bodyweight' && (load.extra !== undefined || load.added.length > 0))
	)
}

function ownLoad(set: PlannedSet, written: PlannedSet, setting: LoadSetting, reference: LoadReference | Unknown): ComputedLoad {
	if (set.load !== written.load) {
		const title = (name: string) => titleOf(name, setting.programme)
		const reason = `The block's load is meant for ${title(setting.swappedFor ?? '')}; ${title(setting.name)} needs one of its own.`
		return unknownLoad({ missing: 'own-load', reason }, setting, reference)
	}
	const asked = exactLoad(set, setting, reference)
	if (asked === undefined) return unknownLoad(undefined, setting, reference)
	return 'missing' in asked ? unknownLoad(asked, setting, reference) : roundedLoad(asked.range, asked.steps, setting, reference)
}

/** The set of an item with the most on the bar, of those that do not refer to it. */
function heaviest(sets: readonly ScheduledSet[]): ScheduledSet | undefined {
	const candidates = sets.filter(set => !isOfTopSet(set.load))
	const end = (set: ScheduledSet) => set.computed.loadTo ?? set.computed.load
	return candidates.reduce<ScheduledSet | undefined>((top, set) => {
		const most = top && end(top)
		const load = end(set)
		if (load === undefined) return top ?? set
		return most === undefined || load.compare(most) > 0 ? set : top
	}, undefined)
}

function ofTopSet(
	load: PlannedLoad & { kind: 'percent' },
	top: ScheduledSet | undefined,
	setting: LoadSetting,
	reference: LoadReference | Unknown,
): ComputedLoad {
	const onBar = top?.computed.load
	if (top === undefined || onBar === undefined) {
		const reason =
			top === undefined ? 'There is no other set of this movement to be the top set.' : 'The load of the top set is not known.'
		const missing = top?.computed.missing ?? 'top-set'
		return unknownLoad({ missing, reason: top?.computed.reason ?? reason }, setting, reference)
	}
	const high = top.computed.loadTo ?? onBar
	const range = { from: share(load.percent.from, onBar), to: share(load.percent.to, high) }
	const { unit } = setting
	const text = () =>
		`${rangeText(load.percent)}% of the top set's ${massRangeText({ from: onBar, to: high }, unit)} = ${massRangeText(range, unit)}.`
	return roundedLoad(range, () => [{ text: text() }], setting, reference)
}

function warmUpSet(
	set: ScheduledSet,
	main: { readonly sets: readonly ScheduledSet[] } | undefined,
	setting: LoadSetting,
): ScheduledSet {
	const { load } = set
	if (load.kind !== 'warm-up') return set
	const reference = referenceOf(setting)
	const working = main?.sets[0]?.computed
	if (working?.load === undefined) {
		const reason = working?.reason ?? 'The first working load is not known.'
		return { ...set, computed: unknownLoad({ missing: working?.missing ?? 'top-set', reason }, setting, reference) }
	}
	const first = working.load
	const exact = first.mul(load.share)
	const { unit } = setting
	const steps = () => {
		const text = `${decimal(load.share.mul(hundred))}% of the first working load, ${massText({ amount: first, unit })} = ${massText({ amount: exact, unit })}.`
		return [{ text, source: 'common practice' }]
	}
	return { ...set, computed: roundedLoad({ from: exact, to: exact }, steps, setting, reference) }
}

function roundedLoad(exact: ExactRange, steps: Steps, setting: LoadSetting, reference: LoadReference | Unknown): ComputedLoad {
	const known = 'missing' in reference ? undefined : reference
	const percent = known && { from: percentOf(exact.from, known), to: percentOf(exact.to, known) }
	const isRange = !exact.from.equals(exact.to)
	const asked = {
		exact: exact.from,
		exactTo: isRange ? exact.to : undefined,
		unit: setting.unit,
		reference: known,
		percent,
	}
	const onBar = loadable(exact, setting.movement, setting.gym, setting.unit, setting.lifter?.uses ?? [])
	if ('missing' in onBar) {
		return {
			...asked,
			load: undefined,
			loadTo: undefined,
			perSide: undefined,
			percentOfBest: undefined,
			reason: onBar.reason,
			missing: onBar.missing,
			beyond: false,
			under: false,
			steps: () => [...steps(), { text: onBar.reason }],
		}
	}
	return {
		...asked,
		load: onBar.range.from,
		loadTo: isRange ? onBar.range.to : undefined,
		perSide: onBar.perSide,
		percentOfBest: known && percentOf(onBar.range.from, known),
		reason: undefined,
		missing: undefined,
		beyond: onBar.beyond,
		under: onBar.under,
		steps: () => [...steps(), ...onBar.steps()],
	}
}

function percentOf(amount: ExactRange['from'], reference: LoadReference): ExactRange['from'] {
	return amount.div(reference.amount).mul(hundred)
}

function unknownLoad(why: Unknown | undefined, setting: LoadSetting, reference: LoadReference | Unknown): ComputedLoad {
	return {
		exact: undefined,
		load: undefined,
		loadTo: undefined,
		exactTo: undefined,
		unit: setting.unit,
		perSide: undefined,
		reference: 'missing' in reference ? undefined : reference,
		percent: undefined,
		percentOfBest: undefined,
		reason: why?.reason,
		missing: why?.missing,
		beyond: false,
		under: false,
		steps: () => (why === undefined ? [] : [{ text: why.reason }]),
	}
}
