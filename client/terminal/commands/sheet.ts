import { Command, Option } from 'commander'
import { declaredBreakdowns } from '../../../language/compute/needs.ts'
import { schedulePlan } from '../../../language/compute/schedule.ts'
import type { Plan } from '../../../language/model/definitions.ts'
import type { Schedule } from '../../../language/model/schedule.ts'
import { loadSheet } from '../../../language/reports/load-sheet.ts'
import type { Folder } from '../../../language/workspace/folder.ts'
import type { BeginTime } from '../../outputs/begin-times.ts'
import type { PaperName } from '../../outputs/pdf/paper.ts'
import { deliver, fileOf, isFolder, layoutFor, refuseBytesOnTerminal, say } from '../output.ts'
import { Refusal } from '../refusal.ts'
import { pageOf } from '../reporters/page.ts'
import { pictureOf } from '../reporters/picture.ts'
import { type SheetSetting, sheetText } from '../reporters/sheet-text.ts'
import { titleOf } from '../text/words.ts'
import { openWorkspace, type Workspace } from '../workspace/workspace.ts'
import { filesOf, sayWhatIsMissing } from './beside.ts'
import { findPlans, refuseManyInOne } from './named.ts'
import { formatOption, outOption, readBegin, readWeek, workspaceOption } from './options.ts'

interface SheetOptions {
	readonly workspace?: string
	readonly format: 'text' | 'json' | 'html' | 'csv' | 'ics' | 'pdf'
	readonly paper?: PaperName
	readonly begin?: readonly BeginTime[]
	readonly week?: number
	readonly out?: string
}

/** `sheet PLAN`: the plan as a lifter needs it. */
export function sheet(): Command {
	return new Command('sheet')
		.description('print a plan with its dates and loads, as its lifter needs it')
		.usage('[options] <plan>')
		.argument('[plan]', "the name of a plan; of a team's plan a member's is winter/per-holst")
		.addOption(workspaceOption())
		.addOption(formatOption('text', 'json', 'html', 'csv', 'ics', 'pdf'))
		.addOption(new Option('--week <number>', 'only this week of the plan').argParser(readWeek))
		.addOption(new Option('--paper <size>', "the size of a PDF's pages; else a4").choices(['a4', 'letter']))
		.addOption(
			new Option(
				'--begin <times>',
				'when sessions begin, in a calendar: 17:30, or "17:30, saturday 10:00, evening 18:30"; else all day',
			).argParser(readBegin),
		)
		.addOption(outOption())
		.addHelpText(
			'after',
			`
text   for the terminal; of a team's plan the sheets of all members, one after the other
json   for programs, version 1; its schema comes with the package
html   one page that needs nothing else, to look at and to print: one week a sheet of paper, with room to write
csv    for spreadsheets (RFC 4180): one row a set
ics    for calendars (RFC 5545): one event a session, all day or from --begin; a later version of the plan changes the same events
pdf    to print and to hand out: one week a page, with room to write; A4, or Letter with --paper letter

With --begin a time alone is for sessions on no part of the day, "morning 7:00" for those in the morning, "saturday 10:00" for that day. A
session lasts its estimated minutes, by the lifter's own clock. Two that would begin together follow one another; one that no time is said
for stays all day.`,
		)
		.action(run)
}

async function run(name: string | undefined, options: SheetOptions): Promise<void> {
	const { week, format, out, paper, begin } = options
	if (paper !== undefined && format !== 'pdf')
		throw new Refusal('Only a PDF has a size of paper: --paper goes with --format pdf.')
	if (begin !== undefined && format !== 'ics')
		throw new Refusal('Only a calendar says when sessions begin: --begin goes with --format ics.')
	if (format === 'pdf') refuseBytesOnTerminal(out)
	const workspace = await openWorkspace(options.workspace)
	const { folder } = workspace
	const plans = findPlans(folder, name)
	const schedules = plans.map(one => schedulePlan(one, folder))
	if (week !== undefined) refuseUnlessThere(week, schedules)
	// On a terminal the sheets of a team follow one another; a file for a program, a calendar or a printer is one lifter's.
	const isAllInOne = format === 'text' && !isFolder(out)
	if (!isAllInOne && !isFolder(out)) refuseManyInOne(plans, folder)
	const madeOf = filesOf(workspace, schedules.flatMap(partsOf))
	const status = sayWhatIsMissing(workspace, madeOf)
	if (isAllInOne) {
		await deliver(schedules.map(one => textOf(one, options, folder)).join('\n\n'), out)
	} else {
		for (const schedule of format === 'ics' ? withSessions(schedules, week) : schedules) {
			await deliver(await written(schedule, options, workspace), await fileOf(out, schedule.plan.name.text, format))
		}
	}
	process.exitCode = status
}

/** The plans of which there can be a calendar: one without an event is none (RFC 5545, 3.6). Says which ones have no session. */
function withSessions(schedules: readonly Schedule[], week: number | undefined): readonly Schedule[] {
	const hasSessions = ({ sessions }: Schedule) => sessions.some(session => week === undefined || session.planWeek === week)
	const when = week === undefined ? '' : ` in week ${week}`
	if (!schedules.some(hasSessions)) throw new Refusal(`There are no sessions${when}, so there is no calendar.`)
	for (const schedule of schedules) {
		if (!hasSessions(schedule)) say(`"${schedule.plan.name.text}" has no sessions${when}, so there is no calendar of it.`)
	}
	return schedules.filter(hasSessions)
}

function partsOf({ plan, lifter, runs }: Schedule) {
	return [plan, lifter, ...runs.map(run => run.block)]
}

function textOf(schedule: Schedule, { week, out }: SheetOptions, folder: Folder): string {
	return sheetText(loadSheet(schedule, folder, { week }), { ...layoutFor(out), ...settingOf(schedule.plan, schedule, folder) })
}

/** The sheet of one lifter, as it is written into a file. */
async function written(schedule: Schedule, options: SheetOptions, workspace: Workspace): Promise<string | Uint8Array> {
	const { week, format, paper, begin } = options
	const { folder } = workspace
	if (format === 'text') return textOf(schedule, options, folder)
	if (format === 'json') return JSON.stringify(loadSheet(schedule, folder, { week }), null, 2)
	const picture = pictureOf(schedule.plan, workspace, filesOf(workspace, partsOf(schedule)))
	if (format === 'html') return pageOf(picture, { sheet: true, week, volume: week === undefined })
	// Loaded only here: the libraries that write files, and the fonts.
	const { writeSheet } = await import('../../outputs/write-sheet.ts')
	return writeSheet(picture, { format, week, paper: paper ?? 'a4', begin, locale: null })
}

function refuseUnlessThere(week: number, schedules: readonly Schedule[]): void {
	const last = Math.max(0, ...schedules.flatMap(one => one.sessions.map(session => session.planWeek)))
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
