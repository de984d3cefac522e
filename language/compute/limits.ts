import type { Block, Lifter, Limits } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { Fact } from '../model/text.ts'
import { compare } from './exact.ts'

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
	/** For messages: "limits house", "limits youth for Juniors" where the coach wrote it, else where the built-in number comes from ("common practice"). */
	readonly origin: string
}

type ValueOf<F> = NonNullable<F> extends Fact<infer T> ? T : never

/** What holds, fact by fact; `undefined` where no definition says anything. */
export type MergedLimits = { readonly [F in FactName]: Limit<ValueOf<Limits[F]>> | undefined }

/** Whose limits: a lifter's by name, those that a block is judged by, or those for nobody in particular. */
export type LimitsOf = string | Block | undefined

/**
 * The limits that hold for a lifter, or for nobody in particular: each fact from the first definition that states it, the lifter's own
 * before those of the lifter's teams, these before the workspace's for all, and those before the built-in ones. Where two teams of the
 * lifter state one fact, the stricter holds, whichever file it stands in; of a fact that is neither strict nor lax, the first.
 *
 * A block is judged by what holds for all who run it: of each fact the laxest of theirs. What is stricter for one of them shows in that
 * lifter's plan.
 */
export function limitsFor(whose: LimitsOf, programme: Programme): MergedLimits {
	if (typeof whose === 'object') return programme.derived(whose, limitsOfBlock)
	const lifter = whose === undefined ? undefined : programme.find('lifter', whose)
	return lifter === undefined ? mergedFor(whose, programme) : programme.derived(lifter, limitsOfLifter)
}

function limitsOfLifter(lifter: Lifter, programme: Programme): MergedLimits {
	return mergedFor(lifter.name.text, programme)
}

function mergedFor(lifter: string | undefined, programme: Programme): MergedLimits {
	const merged: Merging = {}
	for (const rank of ranksFor(lifter, programme)) {
		const ofRank: Merging = {}
		for (const definition of rank) {
			const origin = originOf(definition, programme)
			for (const name of factNames) {
				const fact = definition[name]
				if (fact !== undefined) merge(name, { ...fact, definition, origin }, ofRank, -1)
			}
		}
		for (const name of factNames) if (ofRank[name] !== undefined) merged[name] ??= ofRank[name]
	}
	return merged as MergedLimits
}

function limitsOfBlock(block: Block, programme: Programme): MergedLimits {
	const forAll = limitsFor(undefined, programme)
	const lifters = programme.limits().some(one => one.owner !== undefined) ? runnersOf(block, programme) : []
	const merged: Merging = {}
	for (const lifter of lifters) {
		const own = limitsFor(lifter, programme)
		for (const name of factNames) if (own[name] !== undefined) merge(name, own[name], merged, 1)
	}
	return { ...forAll, ...(merged as MergedLimits) }
}

/** Names of all who run a block, by plans of their own or of a team. */
function runnersOf(block: Block, programme: Programme): readonly string[] {
	const plans = programme.referrersOf('block', block.name.text).filter(one => one.kind === 'plan')
	return plans.flatMap(({ lifter: { text } }) => {
		if (programme.find('lifter', text) !== undefined) return [text]
		return programme.find('team', text)?.members.map(member => member.text) ?? []
	})
}

type Merging = Partial<Record<FactName, Limit<unknown>>>

/** Takes a fact in where none is there yet, or where it is the stricter (`side` below 0) or the laxer (above 0) of the two. */
function merge(name: FactName, fact: Limit<unknown>, into: Merging, side: -1 | 1): void {
	const known = into[name]
	if (known === undefined || strictness[name](fact.value as never, known.value as never) * side > 0) into[name] = fact
}

/** Who states limits for a lifter, the nearest first. For all, the first definition counts. */
function ranksFor(lifter: string | undefined, programme: Programme): readonly (readonly Limits[])[] {
	const all = programme.limits()
	const forAll = all.filter(one => one.owner === undefined).map(one => [one])
	if (lifter === undefined || forAll.length === all.length) return forAll
	const teams = new Set(programme.teamsOf(lifter).map(team => team.name.text))
	const ofLifter = all.filter(one => one.owner?.text === lifter).map(one => [one])
	return [...ofLifter, all.filter(one => isOfTeam(one, teams, programme)), ...forAll]
}

/** A name that is a lifter's means the lifter, even where a team has it too. */
function isOfTeam({ owner }: Limits, teams: ReadonlySet<string>, programme: Programme): boolean {
	return owner !== undefined && teams.has(owner.text) && programme.find('lifter', owner.text) === undefined
}

/** "limits house", "limits youth for Juniors"; of built-in ones where the number comes from. */
function originOf(definition: Limits, programme: Programme): string {
	if (programme.isBuiltIn(definition)) return definition.source?.text ?? 'common practice'
	const { owner, name } = definition
	if (owner === undefined) return `limits ${name.text}`
	const title = (programme.find('lifter', owner.text) ?? programme.find('team', owner.text))?.title?.text ?? owner.text
	return `limits ${name.text} for ${title}`
}

type Order<F extends FactName> = (a: ValueOf<Limits[F]>, b: ValueOf<Limits[F]>) => number

/** Below 0 where the first value asks for more care than the second; 0 where neither does. */
const strictness: { readonly [F in FactName]: Order<F> } = {
	loadRise: compare,
	volumeRise: compare,
	lighterWeekEvery: (a, b) => a.to - b.to || a.from - b.from,
	heavy: (a, b) => a.sessions - b.sessions || compare(a.fromPercent, b.fromPercent),
	heavyHingeAndSquat: (a, b) => a.sessions - b.sessions || (b.apartDays ?? 0) - (a.apartDays ?? 0),
	sessionSeconds: compare,
	bestsWeeks: (a, b) => a - b,
	gatesWeeks: (a, b) => a - b,
	noSetAbove: compare,
	muscleSets: (a, b) => a.to - b.to,
	estimator: () => 0,
	deviation: () => 0,
}
