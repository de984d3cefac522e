import { Command } from 'commander'
import { schedulePlan } from '../../../language/compute/schedule.ts'
import type { Block, Plan } from '../../../language/model/definitions.ts'
import { weeklyVolume } from '../../../language/reports/weekly-volume.ts'
import type { Folder } from '../../../language/workspace/folder.ts'
import { deliver, layoutFor } from '../output.ts'
import { pageOf } from '../reporters/page.ts'
import { pictureOf } from '../reporters/picture.ts'
import { volumeText } from '../reporters/volume-text.ts'
import { titleOf } from '../text/words.ts'
import { openWorkspace } from '../workspace/workspace.ts'
import { filesOf, sayWhatIsMissing } from './beside.ts'
import { findNamed } from './named.ts'
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
text   for the terminal
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
	const of: Plan | Block = findNamed(folder, ['plan', 'block'], name)
	const data = weeklyVolume(of, folder)
	const paths = filesOf(workspace, madeOf(of, folder))
	const status = sayWhatIsMissing(workspace, paths)
	if (format === 'json') await deliver(JSON.stringify(data, null, 2), out)
	else if (format === 'html') await deliver(await pageOf(pictureOf(of, workspace, paths), { sheet: false, volume: true }), out)
	else if (format === 'csv') {
		const { volumeCsv } = await import('../../outputs/volume-csv.ts')
		await deliver(volumeCsv(data, pictureOf(of, workspace, paths).titles), out)
	} else {
		const blockTitle = (block: string) => {
			const definition = folder.find('block', block)
			return definition ? titleOf(definition) : block
		}
		await deliver(volumeText(data, { ...layoutFor(out), heading: `${headingOf(of, folder)}: weekly volume`, blockTitle }), out)
	}
	process.exitCode = status
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
