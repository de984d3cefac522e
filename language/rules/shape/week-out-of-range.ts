import { weekCount } from '../../compute/outline/week-choice.ts'
import { workOutOutline } from '../../compute/outline.ts'
import type { Block, Plan, WeekLine } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { CountRange } from '../../model/quantities.ts'
import type { Correction } from '../../model/reading.ts'
import type { Fact } from '../../model/text.ts'
import { weekLineWithWeeks, weeksOf } from '../common/week-lines.ts'
import { weeksInWords } from '../common/weeks.ts'
import { counted } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import page from './week-out-of-range.md'

export const weekOutOfRange: Rule = {
	code: 'week-out-of-range',
	area: 'shape',
	level: 'error',
	summary: 'A line is about a week that the block, or the run of it, does not have.',
	source: 'the `weeks` of the block',
	fix: 'to confirm',
	since: '0.1.0',
	page,
	check: { block: checkBlock, plan: checkPlan },
}

function checkBlock(block: Block, programme: Programme): Finding[] {
	const { weeks, deload } = block
	// A block that does not say how long it is is as long as its lines.
	if (weeks === undefined) return []
	const lines = block.sessions.flatMap(session => session.items).flatMap(item => item.weekLines)
	const found = lines.flatMap(line => beyond(line, weeks, block, programme))
	if (deload === undefined) return found
	return [...found, ...beyond(deload, weeks, block, programme)]
}

/** A swap in a week that its run does not have. */
function checkPlan(plan: Plan, programme: Programme): Finding[] {
	return plan.runs.flatMap(run => {
		const block = programme.find('block', run.block.text)
		if (block === undefined) return []
		const length = weekCount(block) * run.times
		return run.changes.flatMap((change): Finding[] => {
			const outside = weeksOf((change.kind === 'swap' && change.weeks) || []).filter(week => week > length)
			if (outside.length === 0) return []
			return [
				{
					span: change.span,
					message: `This run has ${counted(length, 'week')}, so ${weeksInWords(outside)} ${outside.length === 1 ? 'is' : 'are'} not there for a swap.`,
					source: `block ${block.name.text}`,
					related: block.weeks
						? [{ definition: block, span: block.weeks.span, message: 'The length of the block stands here.' }]
						: [],
				},
			]
		})
	})
}

function beyond(
	line: Pick<WeekLine, 'weeks' | 'span'> & Partial<WeekLine>,
	length: Fact<number>,
	block: Block,
	programme: Programme,
): Finding[] {
	const outside = weeksOf(line.weeks).filter(week => week > length.value)
	if (outside.length === 0) return []
	return [
		{
			span: line.span,
			message: `The block has ${counted(length.value, 'week')}, so ${weeksInWords(outside)} ${outside.length === 1 ? 'is' : 'are'} not there to be written for.`,
			source: `block ${block.name.text}`,
			related: [{ definition: block, span: length.span, message: 'The length of the block stands here.' }],
			corrections: [...shortened(line, length.value), ...lengthened(outside, length, block, programme)],
		},
	]
}

/** The line without the weeks that are not there. */
function shortened(line: Pick<WeekLine, 'weeks' | 'span'> & Partial<WeekLine>, length: number): Correction[] {
	const inside = weeksOf(line.weeks).filter(week => week <= length)
	if (line.skip === undefined) return []
	const edit = inside.length === 0 ? { span: line.span, text: '' } : weekLineWithWeeks(line as WeekLine, inside)
	return [{ title: inside.length === 0 ? 'Remove this line' : `Write it for ${weeksInWords(inside)} alone`, edits: [edit] }]
}

/** A longer block, where nothing in it is left without work by that. */
function lengthened(outside: readonly number[], length: Fact<number>, block: Block, programme: Programme): Correction[] {
	const last = Math.max(...outside)
	const longer: Block = { ...block, weeks: { ...length, value: last } }
	const lacks = ({ from }: { from: string }) => from === 'none'
	const complete = workOutOutline(longer, programme).weeks.every(({ sessions }) =>
		sessions.every(({ items }) => !items.some(lacks)),
	)
	const linesFit = weeksOf([...everyRange(block)]).every(week => week <= last)
	if (!complete || !linesFit) return []
	return [{ title: `Make the block ${counted(last, 'week')} long`, edits: [{ span: length.span, text: `weeks ${last}` }] }]
}

function everyRange(block: Block): readonly CountRange[] {
	const lines = block.sessions.flatMap(session => session.items).flatMap(item => item.weekLines)
	return [...lines, ...(block.deload ? [block.deload] : [])].flatMap(line => line.weeks)
}
