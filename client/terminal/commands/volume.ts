import { Command } from 'commander'
import { schedulePlan } from '../../../language/compute/schedule.ts'
import type { Block, Plan } from '../../../language/model/definitions.ts'
import { weeklyVolume } from '../../../language/reports/weekly-volume.ts'
import type { Folder } from '../../../language/workspace/folder.ts'
import { deliver, fileOf, isFolder, layoutFor } from '../output.ts'
import { pageOf } from '../reporters/page.ts'
import { pictureOf } from '../reporters/picture.ts'
import { volumeText } from '../reporters/volume-text.ts'
import { titleOf } from '../text/words.ts'
import { openWorkspace, type Workspace } from '../workspace/workspace.ts'
import { filesOf, sayWhatIsMissing } from './beside.ts'
import { definitionCalled, findNamed, refuseManyInOne } from './named.ts'
import { formatOption, outOption, workspaceOption } from './options.ts'

interface VolumeOptions {
	readonly workspace?: string
	readonly format: 'text' | 'json' | 'html' | 'csv'
	readonly out?: string
}

/** `volume BLOCK|PLAN`: what a block or a plan adds up to, week by week. */
export function volume(): Command {
	return new Command('volume')
		.description('print what a plan or a block adds up to, week by week')
		.usage('[options] <name>')
		.argument('[name]', 'the name of a plan, or of a block')
		.addOption(workspaceOption())
		.addOption(formatOption('text', 'json', 'html', 'csv'))
		.addOption(outOption())
		.addHelpText(
			'after',
			`
text   for the terminal; of a team's plan that of all members, one after the other
json   for programs, version 1; its schema comes with the package
html   one page that needs nothing else, with charts
csv    for spreadsheets (RFC 4180): one row a figure`,
		)
		.action(run)
}

async function run(name: string | undefined, options: VolumeOptions): Promise<void> {
	const { format, out } = options
	const workspace = await openWorkspace(options.workspace)
	const { folder } = workspace
	const all = findAll(folder, name)
	// As with sheets: on a terminal one after the other, else a file for each.
	const isAllInOne = format === 'text' && !isFolder(out)
	if (!isAllInOne && !isFolder(out))
		refuseManyInOne(
			all.filter(one => one.kind === 'plan'),
			folder,
		)
	const paths = filesOf(
		workspace,
		all.flatMap(one => madeOf(one, folder)),
	)
	const status = sayWhatIsMissing(workspace, paths)
	if (isAllInOne) {
		await deliver(all.map(one => textOf(one, options, folder)).join('\n\n'), out)
	} else {
		for (const one of all) await deliver(await written(one, options, workspace), await fileOf(out, one.name.text, format))
	}
	process.exitCode = status
}

/** The plans of all members, where it is a team's; else the plan or the block. */
function findAll(folder: Folder, name: string | undefined): readonly (Plan | Block)[] {
	const plan = name === undefined ? undefined : definitionCalled(folder, ['plan'], name)
	const members = plan ? folder.plansIn(plan) : []
	return members.length > 0 ? members : [findNamed(folder, ['plan', 'block'], name)]
}

function textOf(of: Plan | Block, { out }: VolumeOptions, folder: Folder): string {
	const blockTitle = (block: string) => {
		const definition = folder.find('block', block)
		return definition ? titleOf(definition) : block
	}
	return volumeText(weeklyVolume(of, folder), {
		...layoutFor(out),
		heading: `${headingOf(of, folder)}: weekly volume`,
		blockTitle,
	})
}

/** The volume of one plan or block, as it is written into a file. */
async function written(of: Plan | Block, options: VolumeOptions, workspace: Workspace): Promise<string> {
	const { format } = options
	const { folder } = workspace
	if (format === 'text') return textOf(of, options, folder)
	const data = weeklyVolume(of, folder)
	if (format === 'json') return JSON.stringify(data, null, 2)
	const picture = pictureOf(of, workspace, filesOf(workspace, madeOf(of, folder)))
	if (format === 'html') return pageOf(picture, { sheet: false, volume: true })
	const { volumeCsv } = await import('../../outputs/volume-csv.ts')
	return volumeCsv(data, picture.titles)
}

/** Whose it is: each member of a team has a plan of that title. */
function headingOf(of: Plan | Block, folder: Folder): string {
	const lifter = of.kind === 'plan' ? folder.find('lifter', of.lifter.text) : undefined
	return [of, ...(lifter ? [lifter] : [])].map(titleOf).join(' · ')
}

function madeOf(of: Plan | Block, folder: Folder) {
	if (of.kind === 'block') return [of]
	const { lifter, runs } = schedulePlan(of, folder)
	return [of, lifter, ...runs.map(run => run.block)]
}
