import { addDays, mondayOf } from '../../language/compute/calendar.ts'
import type { Block, DefinitionKind, Lifter } from '../../language/model/definitions.ts'
import { weekdays } from '../../language/model/quantities.ts'
import { exampleLines } from '../../language/parser/examples.ts'
import type { Folder } from '../../language/workspace/folder.ts'

/** Kinds that a name can ask for where nobody has written it yet, with the lines that a coach is shown how to write. */
const shownLines = {
	lifter: ['BodyweightLine', 'BestLine', 'AvailableLine'],
	block: ['Session', 'Item'],
	gym: ['BarLine', 'PlatesLine', 'DumbbellsLine'],
	team: ['MembersLine'],
	movement: ['PatternLine', 'TrainsLine', 'MusclesLine', 'EquipmentLine'],
	breakdown: ['WeakLinkLine', 'NeedsLine'],
} as const satisfies Partial<Record<DefinitionKind, readonly string[]>>

export type WritableKind = keyof typeof shownLines

export function isWritable(kind: DefinitionKind): kind is WritableKind {
	return kind in shownLines
}

/**
 * The beginning of a definition for a name that is used already. Lines that only the coach can fill in stand as comments: a best or a
 * session that nobody has written must not count.
 */
export function definitionFor(kind: WritableKind, name: string, folder: Folder): string[] {
	const examples = shownLines[kind].map(rule => `  ${rule === 'Item' ? '//   ' : '// '}${exampleLines[rule]!.example}`)
	return [`${kind} ${name} "${titleFor(name)}"`, ...knownLines(kind, folder), ...examples]
}

/** What can be said without asking: the only gym there is, and how many weeks a block has until somebody says otherwise. */
function knownLines(kind: WritableKind, folder: Folder): string[] {
	const gyms = folder.all('gym').filter(gym => gym.name.text !== '')
	if (kind === 'lifter' && gyms.length === 1) return [`  trains at ${gyms[0]!.name.text}`]
	return kind === 'block' ? ['  weeks 4'] : []
}

/** A plan that runs a block for a lifter from the next monday on, under a name that is free. */
export function planFor(lifter: Lifter, block: Block | undefined, folder: Folder): string[] {
	const days = block ? numberedDays(block) : 0
	const given = lifter.available?.value ?? []
	const free = [...given, ...weekdays.filter(day => !given.includes(day))].slice(0, days)
	const inOrder = weekdays.filter(day => free.includes(day))
	return [
		`plan ${freeName(`${lifter.name.text}-plan`, folder)} for ${lifter.name.text}`,
		...(nextMonday(folder) ? [`  start ${nextMonday(folder)}`] : []),
		...(days > 0 ? [`  days ${inOrder.join(', ')}`] : []),
		block ? `  run ${block.name.text}` : `  // ${exampleLines.Run!.example}`,
	]
}

/** How many days of the block the plan must give a weekday. */
function numberedDays({ sessions, turns }: Block): number {
	const days = [...sessions, ...turns].flatMap(one => one.days)
	return Math.max(0, ...days.flatMap(day => day.number ?? []))
}

function nextMonday(folder: Folder): string | undefined {
	const today = folder.today()
	return today && addDays(mondayOf(today), mondayOf(today) === today ? 0 : 7)
}

function freeName(wanted: string, folder: Folder): string {
	let name = wanted
	for (let number = 2; folder.find('plan', name); number++) name = `${wanted}-${number}`
	return name
}

/** `per-holst` is "Per Holst". */
function titleFor(name: string): string {
	return name
		.split('-')
		.map(word => word.slice(0, 1).toUpperCase() + word.slice(1))
		.join(' ')
}
