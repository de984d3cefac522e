import { type GateAsked, gatesAsked } from '../compute/gates/asked.ts'
import type { Evidence } from '../compute/gates/evidence.ts'
import { featText } from '../compute/gates/feat.ts'
import type { Definition, Plan } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { CalendarDate } from '../model/quantities.ts'
import type { Span } from '../model/text.ts'
import { sourceOf } from './origin.ts'
import type { Place } from './preview.ts'

/** A gate that a plan comes to: when it is needed, and whether it was passed by then. */
export interface GateOnTimeline {
	/** "Plank held 45 s" */
	readonly text: string
	/** Titles of the movements behind it; none where the block itself requires it. */
	readonly before: readonly string[]
	readonly block: string
	/** The first day that asks for it. */
	readonly neededOn: CalendarDate
	readonly state: /** Something shows it: a `passed` line, a logged set or a best. */
		| 'passed'
		/** Nothing shows it yet; a set of the plan does before that day, if it is done as written. */
		| 'planned'
		| 'open'
	/** Of `passed`, the latest evidence before that day; `null` for a best without a date. */
	readonly passedOn: CalendarDate | null
	readonly shownBy: Evidence['kind'] | null
	/** Of `planned`. */
	readonly plannedOn: CalendarDate | null
	/** What came nearest so far, of `planned` and `open`: "30 s". */
	readonly nearest: { readonly text: string; readonly on: CalendarDate | null } | null
	/** Where the gate comes from; `null`: the coach's own text. */
	readonly source: string | null
	/** Where it is shown, else where it is set; `null` where a page leads to no text. */
	readonly place: Place | null
}

type PlaceOf = (definition: Definition, span: Span) => Place | undefined

/** The gates of a plan in the order in which they are needed. */
export function gateTimeline(plan: Plan, programme: Programme, placeOf?: PlaceOf): readonly GateOnTimeline[] {
	return gatesAsked(plan, programme).map(asked => gateOnTimeline(asked, programme, placeOf))
}

function gateOnTimeline(asked: GateAsked, programme: Programme, placeOf: PlaceOf | undefined): GateOnTimeline {
	const { gate, text, setBy, movements, run, date, state, reachedOn } = asked
	const [definition, span] = state.passed ? placeOfEvidence(state.by) : [setBy, gate.span]
	const nearest = state.passed ? undefined : state.bestSoFar
	return {
		text,
		before: movements.map(name => programme.find('movement', name)?.title?.text ?? name),
		block: run.block.name.text,
		neededOn: date,
		state: state.passed ? 'passed' : reachedOn === undefined ? 'open' : 'planned',
		passedOn: (state.passed ? state.on : undefined) ?? null,
		shownBy: state.passed ? state.by.kind : null,
		plannedOn: state.passed ? null : (reachedOn ?? null),
		nearest: nearest && nearest.feat.kind !== 'sign-off' ? { text: featText(nearest.feat), on: nearest.on ?? null } : null,
		source: sourceOf(setBy, programme),
		place: placeOf?.(definition, span) ?? null,
	}
}

function placeOfEvidence(by: Evidence): readonly [Definition, Span] {
	switch (by.kind) {
		case 'passed':
			return [by.lifter, by.passed.span]
		case 'best':
			return [by.lifter, by.best.span]
		case 'logged':
			return [by.log, by.lift.span]
	}
}
