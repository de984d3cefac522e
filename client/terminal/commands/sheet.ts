import { Command, Option } from 'commander'
import { declaredBreakdowns } from '../../../language/compute/needs.ts'
import { schedulePlan } from '../../../language/compute/schedule.ts'
import type { Plan } from '../../../language/model/definitions.ts'
import type { Schedule } from '../../../language/model/schedule.ts'
import { loadSheet } from '../../../language/reports/load-sheet.ts'
import type { Folder } from '../../../language/workspace/folder.ts'
import { deliver, layoutFor } from '../output.ts'
import { Refusal } from '../refusal.ts'
import { pageOf } from '../reporters/page.ts'
import { type SheetSetting, sheetText } from '../reporters/sheet-text.ts'
import { titleOf } from '../text/words.ts'
import { openWorkspace } from '../workspace/workspace.ts'
import { filesOf, sayWhatIsMissing } from './beside.ts'
import { findNamed } from './named.ts'
import { formatOption, outOption, readWeek, workspaceOption } from './options.ts'

interface SheetOptions {
	readonly workspace?: string
	readonly format: 'text' | 'json' | 'html'
	readonly week?: number
	readonly out?: string
}

/** `sheet PLAN`: the plan as a lifter needs it. */
export function sheet(): Command {
	return new Command('sheet')
		.description('print a plan with its dates and loads, as its lifter needs it')
		.argument('<plan>', 'the name of a plan')
		.addOption(workspaceOption())
		.addOption(formatOption('text', 'json', 'html'))
		.addOption(new Option('--week <number>', 'only this week of the plan').argParser(readWeek))
		.addOption(outOption())
		.action(run)
}

async function run(name: string, options: SheetOptions): Promise<void> {
	const { week, format, out } = options
	const workspace = await openWorkspace(options.workspace)
	const { folder } = workspace
	const plan = findNamed(folder, ['plan'], name)
	const schedule = schedulePlan(plan, folder)
	if (week !== undefined) refuseUnlessThere(week, schedule)
	const data = loadSheet(schedule, folder, { week })
	const madeOf = filesOf(workspace, [plan, schedule.lifter, ...schedule.runs.map(run => run.block)])
	const status = sayWhatIsMissing(workspace, madeOf)
	if (format === 'json') await deliver(JSON.stringify(data, null, 2), out)
	else if (format === 'html')
		await deliver(await pageOf(plan, workspace, madeOf, { sheet: true, week, volume: week === undefined }), out)
	else await deliver(sheetText(data, { ...layoutFor(out), ...settingOf(plan, schedule, folder) }), out)
	process.exitCode = status
}

function refuseUnlessThere(week: number, schedule: Schedule): void {
	const last = Math.max(0, ...schedule.sessions.map(session => session.planWeek))
	if (last > 0 && week > last) throw new Refusal(`This plan has ${last} weeks; there is no week ${week}.`)
}

function settingOf(plan: Plan, { lifter }: Schedule, folder: Folder): Omit<SheetSetting, 'style' | 'width'> {
	const title = (kind: 'block' | 'gym', name: string) => {
		const definition = folder.find(kind, name)
		return definition ? titleOf(definition) : name
	}
	const declared = declaredBreakdowns(plan, folder)
	return {
		heading: [titleOf(plan), ...(lifter ? [titleOf(lifter)] : [])].join(' · '),
		blockTitle: name => title('block', name),
		gymTitle: name => title('gym', name),
		meets: plan.meets.map(meet => ({ date: meet.on, title: meet.title?.text ?? '' })),
		cautions: [...new Set(declared.flatMap(({ breakdown }) => breakdown.caution?.text ?? []))],
	}
}
