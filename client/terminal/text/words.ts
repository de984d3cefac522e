import type { Definition } from '../../../language/model/definitions.ts'
import type { ShownLevel } from '../../../language/model/problem.ts'
import { spokenName } from '../../views/reader/words.ts'
import { plain } from './plain.ts'

/** `1 session`, `2 sessions`. */
export function counted(count: number, one: string, more = `${one}s`): string {
	return `${count} ${count === 1 ? one : more}`
}

const nouns: Record<ShownLevel, string> = { error: 'error', warning: 'warning', info: 'info', hint: 'hint' }

/** `2 errors`, with the level's word in the right number. */
export function countedLevel(level: ShownLevel, count: number): string {
	return counted(count, nouns[level])
}

/** What people call a definition: its title, else its name in words; a member's plan without a title is called by the team's plan alone. */
export function titleOf(definition: Definition): string {
	return plain(definition.title?.text ?? spokenName(definition.name.text.replace(/\/.*/, '')))
}
