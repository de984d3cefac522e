import type * as tree from '../grammar/generated/ast.ts'
import type { MemberDays, Plan, Run } from '../model/definitions.ts'
import type { Fault } from '../model/reading.ts'
import type { Span } from '../model/text.ts'
import { MemberLines } from './member-lines.ts'
import { PlanDaysReader } from './plan-days.ts'
import type { Reader } from './reader.ts'
import { readRun } from './run.ts'
import { readRunChange } from './run-change.ts'

export function readPlan(reader: Reader, node: tree.Plan, faults: readonly Fault[]): Plan {
	const span = reader.span(node)
	const lifter = reader.lifterOrTeam(node, 'lifter')
	const days = new PlanDaysReader(reader)
	const members: MemberDays[] = []
	const runs: Run[] = []
	if (!node.lifter && faults.length === 0) {
		const message = 'A plan says for whom it is: plan mara-autumn for mara-lind.'
		reader.fault('syntax', reader.spanOf(node, 'name'), message)
	}
	for (const line of node.lines ?? []) {
		if (!reader.common(line, span) && !days.read(line)) {
			if (line.$type === 'Run') runs.push(readRun(reader, line, days, members))
			else {
				// Behind a meet or a pause a line still belongs to the run above.
				const run = runs.pop()
				const changed = line.$type === 'ForLine' ? readMember(reader, line, run, members, span) : readChange(reader, line, run)
				if (changed) runs.push(changed)
			}
		}
		const last = runs.pop()
		const end = reader.span(line).end
		if (last) runs.push({ ...last, tail: { start: end, end } })
	}
	return { kind: 'plan', lifter, ...days.found(), runs, members, ...reader.frame(node, faults) }
}

function readMember(
	reader: Reader,
	line: tree.ForLine,
	run: Run | undefined,
	members: MemberDays[],
	plan: Span,
): Run | undefined {
	const lines = new MemberLines(reader, line, run?.span ?? plan, run !== undefined)
	members.push(...lines.days())
	return run && { ...run, members: [...run.members, lines.ofRun()] }
}

function readChange(reader: Reader, line: tree.PlanLine, run: Run | undefined): Run | undefined {
	const change = line.$type === 'MoveLine' ? readRunChange(reader, line) : undefined
	if (run) return change ? { ...run, changes: [...run.changes, change] } : run
	if (change) {
		const message = 'This stands below the run that it changes. For one day alone: move heavy-pull from 2026-10-07 to 2026-10-09.'
		reader.fault('syntax', reader.span(line), message)
	}
	return undefined
}
