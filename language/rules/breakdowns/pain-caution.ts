import type { Block, Breakdown, Lifter, Log, LogEntry } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Name, Span } from '../../model/text.ts'
import type { Rule } from '../rule.ts'
import page from './pain-caution.md'

export const painCaution: Rule = {
	code: 'pain-caution',
	area: 'breakdowns',
	level: 'warning',
	summary: 'Pain or symptoms are declared or logged: stop, and see a licensed clinician.',
	source: 'common practice: pain is for a licensed clinician, not for a plan',
	fix: 'none',
	since: '0.1.0',
	page,
	always: true,
	check: { lifter: checkLifter, block: checkBlock, log: checkLog },
}

const advice = 'Stop, and see a licensed clinician before loading it again. This tool clears nobody.'

function checkLifter(lifter: Lifter, programme: Programme): Finding[] {
	return lifter.fails.flatMap(fails => cautionOf(fails.breakdown, fails.span, programme))
}

function checkBlock(block: Block, programme: Programme): Finding[] {
	return block.answers.flatMap(answer => cautionOf(answer, answer.span, programme))
}

function cautionOf(name: Name, span: Span, programme: Programme): Finding[] {
	const breakdown = programme.find('breakdown', name.text)
	return breakdown?.caution ? [finding(breakdown, span)] : []
}

function finding(breakdown: Breakdown, span: Span): Finding {
	const { caution } = breakdown
	const text = (caution?.text ?? '').trim()
	return {
		span,
		// A caution that sends to a clinician says it all.
		message: /clinician/i.test(text) ? `${text} This tool clears nobody.` : `${text} ${advice}`.trim(),
		source: breakdown.source?.text ?? 'common practice',
		related: caution ? [{ definition: breakdown, span: caution.span, message: 'The caution stands here.' }] : [],
	}
}

/** What hurt, and position lost in the way of such a breakdown, until a later `cleared` line of any log of the lifter. */
function checkLog(log: Log, programme: Programme): Finding[] {
	const cleared = programme.logsOf(log.name.text).flatMap(one => one.cleared.flatMap(line => line.on ?? []))
	const isCleared = (entry: LogEntry) => entry.on !== undefined && cleared.some(on => on >= entry.on!)
	return log.entries
		.filter(entry => !isCleared(entry))
		.flatMap(entry => {
			const hurt = entry.hurt.map(
				(what): Finding => ({
					span: what.span,
					message: `${entry.on === undefined ? 'It' : `On ${entry.on} it`} hurt: ${what.text.replace(/[.\s]+$/, '')}. ${advice}`,
					source: 'common practice',
				}),
			)
			const broke = entry.lifts.flatMap(lift =>
				lift.sets.flatMap(set => (set.brokeWith ? cautionOf(set.brokeWith, set.brokeWith.span, programme) : [])),
			)
			// The sets of one `4 x 5` are one place.
			return [...hurt, ...broke.filter((one, index) => broke.findIndex(other => other.span.start === one.span.start) === index)]
		})
}
