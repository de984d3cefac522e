import type { Definition } from '../model/definitions.ts'
import type { Fault, TextEdit } from '../model/reading.ts'
import type { Span } from '../model/text.ts'
import { type Line, linesOf } from '../parser/lines.ts'
import { type Parsed, spanOf } from '../parser/parse.ts'
import { type Respelling, reportOldSpelling, respellingsOf } from '../spelling/old-spelling.ts'
import { readBlock } from './block.ts'
import { readBreakdown } from './breakdown.ts'
import { readGym } from './gym.ts'
import { readLifter } from './lifter.ts'
import { readLimits } from './limits.ts'
import { readLog } from './log.ts'
import { readMovement } from './movement.ts'
import { readPlan } from './plan.ts'
import { readProgression } from './progression.ts'
import { Reader } from './reader.ts'
import { readRuleLevels } from './rule-levels.ts'
import { reportSpellings } from './spellings.ts'
import { readTeam } from './team.ts'

/** More messages than this about one definition that does not read tell a coach nothing new. */
const mostSyntaxFaults = 3

/** One parsed definition as plain data, or what is wrong with a text that none could be made of. */
export function readDefinition(
	parsed: Parsed,
	unreadable: readonly Fault[],
): { definition: Definition | undefined; faults: readonly Fault[] } {
	const isPassedOver = (span: Span) => parsed.passedOver.some(one => one.start <= span.start && span.end <= one.end)
	const outside = [...unreadable, ...reportSpellings(parsed.tokens)].filter(({ span }) => !isPassedOver(span))
	const faults = [...parsed.faults, ...outside].sort((one, other) => one.span.start - other.span.start)
	const node = parsed.tree
	// Where no definition begins, one message says it all.
	if (!node) return { definition: undefined, faults: faults.slice(0, 1) }
	const read = readAs(new Reader(), node, faults)
	const definition = { ...read, faults: worthSaying(withSpellings(onceEach(read.faults), parsed)) }
	return { definition, faults: definition.faults }
}

/** The faults; of two about the same words, the one that puts more right: `at 71,5` lacks its unit, and has a comma. */
function onceEach(faults: readonly Fault[]): Fault[] {
	const putsRight = (other: Fault, { code, span, corrections }: Fault) => {
		const isMore = other.corrections.length > corrections.length
		if (code === 'syntax') return isMore && other.code === code && other.span.start === span.start && other.span.end === span.end
		if (code !== 'bad-number' && code !== 'bad-date') return false
		const rewrites = other.corrections[0]?.edits.some(edit => isWithin(span, edit.span) && !isWithin(edit.span, span))
		return rewrites || (isMore && isWithin(span, other.span))
	}
	return faults.filter(one => !faults.some(other => putsRight(other, one)))
}

/**
 * The faults, and what is written otherwise. One slip costs one message: where a fault of a line has a correction, what else is written
 * otherwise on that line is put right with it.
 */
function withSpellings(faults: readonly Fault[], parsed: Parsed): Fault[] {
	const all = [...faults]
	const left: Respelling[] = []
	const isPassedOver = (span: Span) => parsed.passedOver.some(one => one.start <= span.start && span.end <= one.end)
	const lines = linesOf({ ...parsed, tokens: parsed.tokens.filter(token => !isPassedOver(spanOf(token))) }, 0)
	let taken = 0
	for (const [at, line] of lines.entries()) {
		const span = extentOf(line)
		const isBroken = (fault: Fault) => span && touches(fault.span, span) && !parsed.passedOver.includes(fault.span)
		if (!span || parsed.faults.some(isBroken)) continue
		// Signs are few; those of the lines above are not looked at again.
		while (parsed.leftOut[taken] && parsed.leftOut[taken]!.end < (lines[at - 1]?.tokens[0]?.start ?? 0)) taken++
		const next = lines[at + 1]?.tokens[0]?.start ?? parsed.text.length
		let until = taken
		while (parsed.leftOut[until] && parsed.leftOut[until]!.start < next) until++
		const found = respellingsOf(line, parsed.text, parsed.leftOut.slice(taken, until))
		if (found.length === 0) continue
		// What is passed over may stand behind the last word of its line.
		const own = { start: span.start, end: Math.max(span.end, next - 1) }
		// A line that is only meant goes with the one that it belongs to.
		const words = span.end > span.start ? span : ((line.above && extentOf(line.above)) ?? span)
		const isOwn = ({ span: place, corrections }: Fault) =>
			touches(place, parsed.passedOver.includes(place) ? own : words) ||
			corrections.some(({ edits }) => edits.some(edit => isWithin(edit.span, { start: words.start - 1, end: words.end })))
		const index = all.findIndex(fault => fault.code !== 'stated-twice' && fault.corrections.length > 0 && isOwn(fault))
		const together = index < 0 ? undefined : correctedTogether(all[index]!, found)
		if (together) all[index] = together
		else left.push(...found)
	}
	return [...all, ...reportOldSpelling(left)].sort((a, b) => a.span.start - b.span.start)
}

/** A fault with corrections that change the spellings too, but for what they replace; none where they are about parts of the same words. */
function correctedTogether(fault: Fault, found: readonly Respelling[]): Fault | undefined {
	const spelled = found.flatMap(({ edits }) => edits)
	const corrections = fault.corrections.map(({ edits, ...correction }) => ({
		...correction,
		edits: [...edits, ...spelled.filter(one => !edits.some(({ span }) => isWithin(one.span, span)))].sort(
			(a, b) => a.span.start - b.span.start || a.span.end - b.span.end,
		),
	}))
	const overlaps = corrections.some(({ edits }) =>
		edits.some((one, index) => edits.some((other, at) => at > index && cross(one, other))),
	)
	return overlaps ? undefined : { ...fault, corrections }
}

function isWithin(inner: Span, outer: Span): boolean {
	// What is put in at an end stands beside what is replaced.
	if (inner.start === inner.end) return outer.start < inner.start && inner.end < outer.end
	return outer.start <= inner.start && inner.end <= outer.end
}

function extentOf({ tokens }: Line): Span | undefined {
	const [first] = tokens
	return first && { start: first.start, end: tokens.reduce((most, { end }) => Math.max(most, end), first.end) }
}

function touches(one: Span, other: Span): boolean {
	return one.start <= other.end && other.start <= one.end
}

function cross(one: TextEdit, other: TextEdit): boolean {
	return parts(one, other) || parts(other, one) || (one.span.start < other.span.end && other.span.start < one.span.end)
}

/** New lines come at the end of theirs, white space before it or not: what begins there and goes on below is parted by them. */
function parts({ span: { start, end }, text }: TextEdit, { span }: TextEdit): boolean {
	return start === end && text.startsWith('\n') && span.start === start && span.end > start
}

/** The first few that say that a text does not read, and all others. */
function worthSaying(faults: readonly Fault[]): Fault[] {
	const syntax = faults.filter(fault => fault.code === 'syntax').slice(0, mostSyntaxFaults)
	return faults.filter(fault => fault.code !== 'syntax' || syntax.includes(fault))
}

function readAs(reader: Reader, node: NonNullable<Parsed['tree']>, faults: readonly Fault[]): Definition {
	switch (node.$type) {
		case 'Movement':
			return readMovement(reader, node, faults)
		case 'Breakdown':
			return readBreakdown(reader, node, faults)
		case 'Progression':
			return readProgression(reader, node, faults)
		case 'Limits':
			return readLimits(reader, node, faults)
		case 'Gym':
			return readGym(reader, node, faults)
		case 'Lifter':
			return readLifter(reader, node, faults)
		case 'Block':
			return readBlock(reader, node, faults)
		case 'Plan':
			return readPlan(reader, node, faults)
		case 'Log':
			return readLog(reader, node, faults)
		case 'Team':
			return readTeam(reader, node, faults)
		case 'RuleLevels':
			return readRuleLevels(reader, node, faults)
	}
}
