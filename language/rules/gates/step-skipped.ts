import type { Block, Progression } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import { originOf } from '../common/origins.ts'
import { titleOf } from '../common/titles.ts'
import { inWords } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import page from './step-skipped.md'
import { stepsInBlock } from './steps-in-block.ts'

export const stepSkipped: Rule = {
	code: 'step-skipped',
	area: 'gates',
	level: 'warning',
	summary: 'A block holds two steps of a progression but not one between them.',
	source: 'the steps of the progression',
	fix: 'none',
	since: '0.1.0',
	page,
	check: {
		block: (block, programme) => programme.all('progression').flatMap(one => check(one, block, programme)),
	},
}

function check(progression: Progression, block: Block, programme: Programme): Finding[] {
	const held = stepsInBlock(progression, block, programme)
	return held.flatMap((upper, place): Finding[] => {
		const lower = held[place - 1]
		if (lower === undefined || upper.index - lower.index < 2) return []
		const between = progression.steps.slice(lower.index + 1, upper.index)
		const title = (name: string) => titleOf('movement', name, programme)
		const skipped = inWords(between.map(step => title(step.movement.text)))
		return [
			{
				span: upper.span,
				message: `This block goes from ${title(lower.name)} to ${title(upper.name)} without ${skipped}, which ${between.length === 1 ? 'stands' : 'stand'} between them in ${progression.name.text} (${originOf(progression, programme)}).`,
				source: originOf(progression, programme),
				related: [
					{ definition: block, span: lower.span, message: 'The step below.' },
					...between.map(step => ({ definition: progression, span: step.span, message: 'The step that is skipped.' })),
				],
			},
		]
	})
}
