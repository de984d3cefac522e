import type { VolumeWeek, WeeklyVolume } from '../../../language/reports/weekly-volume.ts'
import { generalCaution } from '../../views/general-caution.ts'
import { readerOf } from '../../views/reader/reader.ts'
import { spokenName } from '../../views/reader/words.ts'
import { padEnd, padStart, paragraph, Table, widthOf } from '../text/columns.ts'
import { plain } from '../text/plain.ts'
import type { Style } from '../text/style.ts'

/** What the volume for people says beside the figures. */
export interface VolumeSetting {
	readonly style: Style
	readonly width: number
	/** The plan or block, as people call it. */
	readonly heading: string
	blockTitle(name: string): string
}

/** A row of figures: one cell a week; an empty one where there is nothing. */
interface Row {
	readonly name: string
	readonly cells: readonly string[]
}

interface Section {
	readonly title: string
	readonly rows: readonly Row[]
}

const reader = readerOf(null)

/** What a plan or block adds up to: weeks side by side, a section for each figure. */
export function volumeText(volume: WeeklyVolume, setting: VolumeSetting): string {
	const { style, width, heading } = setting
	if (volume.weeks.length === 0) return `${style.strong(heading)}\n\nThere is nothing to add up: no week has a session.`
	const foot = style.quiet(paragraph(generalCaution, 0, width))
	return [style.strong(heading), weeksText(volume, setting), ...figures(volume, setting), foot].join('\n\n')
}

/** The sections, with as many weeks side by side as there is room for, then those with the next weeks. */
function figures(volume: WeeklyVolume, { style, width }: VolumeSetting): string[] {
	const sections = sectionsOf(volume)
	const rows = sections.flatMap(section => section.rows)
	const nameWidth = Math.max(...rows.map(row => widthOf(row.name)), ...sections.map(section => widthOf(section.title)))
	const heads = volume.weeks.map(week => `week ${week.week}`)
	const widths = heads.map((head, week) => Math.max(widthOf(head), ...rows.map(row => widthOf(row.cells[week] ?? ''))))
	return chunks(widths, width - nameWidth).flatMap(weeks => {
		const line = (name: string, cells: readonly string[]) =>
			[padEnd(name, nameWidth), ...weeks.map(week => padStart(cells[week]!, widths[week]!))].join(gap).trimEnd()
		return sections.flatMap(section => {
			const shown = section.rows.filter(row => weeks.some(week => row.cells[week] !== ''))
			if (shown.length === 0) return []
			const head = style.strong(section.title) + style.quiet(line(section.title, heads).slice(section.title.length))
			return [head, ...shown.map(row => line(row.name, row.cells))].join('\n')
		})
	})
}

const gap = '  '

/** The numbers of the columns, in groups that fit into a width; a column that is too wide by itself stands alone. */
function chunks(widths: readonly number[], room: number): number[][] {
	const groups: number[][] = []
	let left = 0
	for (const [column, width] of widths.entries()) {
		const taken = width + gap.length
		if (groups.length === 0 || taken > left) {
			groups.push([])
			left = room
		}
		groups.at(-1)!.push(column)
		left -= taken
	}
	return groups
}

/** Which weeks these are. */
function weeksText({ weeks }: WeeklyVolume, { style, blockTitle }: VolumeSetting): string {
	const rows = weeks.map(week => [
		String(week.week),
		week.from ?? '',
		plain(blockTitle(week.block)),
		`${week.blockWeek}${week.deload ? ', lighter' : ''}`,
		String(week.sessions),
		`${week.minutes} min`,
		week.excludedSets === 0 ? '' : String(week.excludedSets),
	])
	const table = new Table(
		[
			{ title: 'Week', align: 'right' },
			{ title: 'From' },
			{ title: 'Block' },
			{ title: 'Its week' },
			{ title: 'Sessions', align: 'right' },
			{ title: 'Length', align: 'right' },
			{ title: 'Sets not counted', align: 'right' },
		],
		rows,
	)
	return [style.quiet(table.heads), ...rows.map(row => table.row(row))].map(line => `  ${line}`).join('\n')
}

function sectionsOf({ weeks, unit }: WeeklyVolume): Section[] {
	const lifts = [...new Set(weeks.flatMap(week => Object.keys(week.lifts)))]
	const muscles = [...new Set(weeks.flatMap(week => Object.keys(week.muscles)))].sort()
	const lift = (title: string, cell: (lift: VolumeWeek['lifts'][string]) => string): Section => ({
		title,
		rows: rowsOf(
			lifts,
			name => plain(weeks.map(week => week.lifts[name]?.title).find(one => one !== undefined) ?? spokenName(name)),
			name => weeks.map(week => (week.lifts[name] ? cell(week.lifts[name]) : '')),
		),
	})
	return [
		lift('Sets', ({ sets, setsTo }) => ends(sets, setsTo)),
		lift('Repetitions', ({ reps }) => ends(reps.low, reps.high)),
		lift('Days with it', ({ sessions }) => String(sessions)),
		lift(unit === null ? 'Sets × reps × percent' : `Tonnage in ${unit}`, ({ tonnage, relative }) => {
			const total = tonnage ?? relative
			return total === null ? '' : ends(total.low, total.high)
		}),
		lift('Average intensity in %', ({ averagePercent, averagePercentTo }) => ends(averagePercent, averagePercentTo)),
		lift('Heaviest set in %', ({ topPercent, topPercentTo }) => ends(topPercent, topPercentTo)),
		{
			title: 'Sets a muscle',
			rows: rowsOf(muscles, spokenName, name =>
				weeks.map(week => ends(week.muscles[name] ?? null, week.musclesTo[name] ?? null)),
			),
		},
		linkSection('Sets a link', weeks, ({ sets, setsTo }) => ends(sets, setsTo)),
		linkSection('Under tension in s', weeks, ({ seconds, secondsTo }) => ends(seconds, secondsTo)),
	]
}

function linkSection(title: string, weeks: readonly VolumeWeek[], cell: (link: VolumeWeek['links']['drive']) => string): Section {
	return { title, rows: rowsOf(['stability', 'drive'] as const, spokenName, link => weeks.map(week => cell(week.links[link]))) }
}

/** Rows that hold a figure in some week. */
function rowsOf<T>(keys: readonly T[], name: (key: T) => string, cells: (key: T) => readonly string[]): Row[] {
	return keys.map(key => ({ name: name(key), cells: cells(key) })).filter(row => row.cells.some(cell => cell !== ''))
}

/** A figure, or both ends where it is a range; 0 is as good as nothing. */
function ends(low: string | number | null, high: string | number | null): string {
	if (low === null) return ''
	const text = reader.range(String(low), String(high ?? low))
	return text === '0' ? '' : text
}
