import type * as tree from '../grammar/generated/ast.ts'
import type { MemberDays, MemberRun, RunChange } from '../model/definitions.ts'
import type { Name, QuotedText, Span } from '../model/text.ts'
import { PlanDaysReader } from './plan-days.ts'
import type { Reader } from './reader.ts'
import { readRunChange } from './run-change.ts'

/** `for per-holst` and the lines below it: what belongs to the run that it stands in, and what belongs to the member's whole plan. */
export class MemberLines {
	private readonly member: Name
	private readonly span: Span
	private readonly changes: RunChange[] = []
	private readonly notes: QuotedText[] = []
	private readonly own: PlanDaysReader
	private hasDays = false

	/** `scope` is what an exception here silences; `inRun` says whether there is a run that lines can change. */
	constructor(
		reader: Reader,
		line: tree.ForLine,
		scope: Span,
		private readonly inRun: boolean,
	) {
		this.span = reader.span(line)
		this.member = reader.reference(line, 'member', 'lifter')
		this.own = new PlanDaysReader(reader, this.member.text)
		for (const each of line.lines ?? []) this.read(reader, each, scope)
	}

	private read(reader: Reader, line: tree.MemberLine, scope: Span): void {
		if (reader.common(line, scope, this.notes, this.member.text)) return
		// In a run a move of one day is the run's, as the other moves are.
		const isOfRun = this.inRun && line.$type === 'MoveLine'
		if (!isOfRun && this.own.read(line)) {
			this.hasDays = true
			return
		}
		const change = readRunChange(reader, line)
		if (change && this.inRun) this.changes.push(change)
		else if (change) reader.fault('syntax', reader.span(line), 'This stands below the run that it changes.')
	}

	/** What holds for the member's whole plan; none where all of it is the run's. */
	days(): MemberDays[] {
		const { member, span } = this
		if (this.inRun && !this.hasDays) return []
		return [{ member, ...this.own.found(), notes: this.inRun ? [] : this.notes, span }]
	}

	ofRun(): MemberRun {
		const { member, changes, notes, span } = this
		return { member, changes, notes, span }
	}
}
