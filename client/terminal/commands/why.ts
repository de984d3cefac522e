import { Command } from 'commander'
import { schedulePlan } from '../../../language/compute/schedule.ts'
import type { CalendarDate } from '../../../language/model/quantities.ts'
import type { Schedule } from '../../../language/model/schedule.ts'
import { type DayExplanation, explainDay } from '../../../language/reports/explanation.ts'
import { generalCaution } from '../../views/general-caution.ts'
import { spokenName } from '../../views/reader/words.ts'
import { layoutFor, print } from '../output.ts'
import { Refusal } from '../refusal.ts'
import { paragraph, wrap } from '../text/columns.ts'
import { plain } from '../text/plain.ts'
import type { Style } from '../text/style.ts'
import { titleOf } from '../text/words.ts'
import { openWorkspace } from '../workspace/workspace.ts'
import { filesOf, sayWhatIsMissing } from './beside.ts'
import { definitionCalled, findNamed } from './named.ts'
import { readDate, workspaceOption } from './options.ts'

/** `why PLAN DATE MOVEMENT`: how each load of that day came about, step by step. */
export function why(): Command {
	return new Command('why')
		.description('tell how each load of a movement on a day came about')
		.argument('<plan>', "the name of a plan; of a team's plan a member's is winter/per-holst")
		.argument('<date>', 'a day of the plan, such as 2026-10-05', readDate)
		.argument('<movement>', 'the name of a movement')
		.addOption(workspaceOption())
		.action(run)
}

async function run(name: string, date: CalendarDate, movement: string, options: { readonly workspace?: string }): Promise<void> {
	const workspace = await openWorkspace(options.workspace)
	const { folder } = workspace
	const plan = findNamed(folder, ['plan'], name)
	const schedule = schedulePlan(plan, folder)
	const meant = definitionCalled(folder, ['movement'], movement)?.name.text ?? movement
	const explained = explainDay(schedule, date, meant, folder)
	if (explained.length === 0) throw new Refusal(plain(whyNothing(schedule, date, meant)))
	const madeOf = filesOf(workspace, [plan, schedule.lifter, ...schedule.runs.map(run => run.block)])
	const status = sayWhatIsMissing(workspace, madeOf)
	const { style, width } = layoutFor(undefined)
	const heading = style.strong([titleOf(plan), ...(schedule.lifter ? [titleOf(schedule.lifter)] : [])].join(' · '))
	const foot = style.quiet(paragraph(generalCaution, 0, width))
	print([heading, ...explained.map(one => explanationText(one, style, width)), foot].join('\n\n'))
	process.exitCode = status
}

function explanationText({ session, item, sets }: DayExplanation, style: Style, width: number): string {
	const role = item.role === 'main' || item.role === 'accessory' ? '' : ` (${item.role})`
	const title = (item.movement ? titleOf(item.movement) : item.movementName.text) + role
	const where = `${session.weekday}${session.part === undefined ? '' : ` ${session.part}`} ${session.date}, ${session.session.title?.text ?? spokenName(session.session.name.text)}`
	const head = `${style.strong(plain(title))}${style.quiet(plain(`  ${where}`))}`
	const bodies = sets.map(({ heading, lines }) => {
		const steps = lines.map(line => `    ${wrap(plain(line), width - 6).join('\n      ')}`)
		return [`  ${plain(heading)}`, ...steps].join('\n')
	})
	return [head, ...bodies].join('\n\n')
}

/** What the plan has instead, so that the next question can be right. */
function whyNothing({ plan, sessions }: Schedule, date: CalendarDate, movement: string): string {
	const that = sessions.filter(session => session.date === date)
	if (that.length > 0) {
		const names = new Set(that.flatMap(session => session.items.map(item => item.movementName.text)))
		return `There is no "${movement}" on ${date}. That day has: ${[...names].join(', ')}.`
	}
	const pause = plan.pauses.find(one => one.from <= date && date <= one.to)
	const paused = pause ? ` It lies in the pause from ${pause.from} to ${pause.to}.` : ''
	const days = sessions
		.filter(session => session.items.some(item => item.movementName.text === movement))
		.map(session => session.date)
	if (days.length === 0) return `The plan has no "${movement}" on any day, and no session on ${date}.${paused}`
	return `The plan has no session on ${date}.${paused} "${movement}" stands on: ${[...new Set(days)].join(', ')}.`
}
