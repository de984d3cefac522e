import type { Definition, DefinitionKind, DefinitionOf, Plan } from '../../../language/model/definitions.ts'
import { nearest } from '../../../language/names/nearest.ts'
import { ourName } from '../../../language/parser/tokens.ts'
import type { Folder } from '../../../language/workspace/folder.ts'
import { Refusal } from '../refusal.ts'
import { plain } from '../text/plain.ts'

/** More names than this are no help to choose from. */
const mostNames = 20

/**
 * The definition of a name, or of a title, that was given on the command line: of the first kind that has it.
 * @param name Nothing where none was given.
 * @throws {Refusal} where no file defines it, with the nearest name or all that there are.
 */
export function findNamed<K extends DefinitionKind>(
	folder: Folder,
	kinds: readonly K[],
	name: string | undefined,
): DefinitionOf<K> {
	const found = name === undefined ? undefined : definitionCalled(folder, kinds, name)
	const definition: Definition | undefined = found
	if (definition?.kind === 'plan') return ofOneLifter(definition, folder) as DefinitionOf<K>
	if (found) return found
	const names = [...new Set(kinds.flatMap(kind => folder.all(kind).map(one => one.name.text)))].filter(one => one !== '').sort()
	const begin =
		name === undefined
			? `Which ${kinds.join(' or ')}? Write its name behind the command.`
			: `No ${kinds.join(' or ')} is called "${name}".`
	throw new Refusal(plain(`${begin} ${suggestion(name ?? '', names)}`))
}

/** By its name, else as people write it: `Back squat` is the movement that is called so, or has that title. */
export function definitionCalled<K extends DefinitionKind>(
	folder: Folder,
	kinds: readonly K[],
	name: string,
): DefinitionOf<K> | undefined {
	const names = [name, ourName(name)].filter(one => one !== '')
	const named = names.flatMap(one => kinds.map(kind => folder.find(kind, one))).find(one => one !== undefined)
	if (named) return named
	const titled = kinds.flatMap(kind => folder.all(kind)).filter(one => one.title?.text.toLowerCase() === name.toLowerCase())
	return titled.length === 1 ? titled[0] : undefined
}

/**
 * The plans of single lifters that a name stands for: one, or, where it is a team's plan, those of all its members.
 * @throws {Refusal} where no file defines it, or the team has no members.
 */
export function findPlans(folder: Folder, name: string | undefined): readonly Plan[] {
	const found = name === undefined ? undefined : definitionCalled(folder, ['plan'], name)
	const plans = found ? folder.plansIn(found) : []
	return plans.length > 0 ? plans : [findNamed(folder, ['plan'], name)]
}

/** @throws {Refusal} where a file is asked for that can only be one lifter's, and a team's plan is meant. */
export function refuseManyInOne(plans: readonly Plan[], folder: Folder): void {
	const team = plans.length > 1 ? folder.find('plan', plans[0]!.name.text.split('/')[0]!) : undefined
	if (team) throw new Refusal(plain(`${oneOfMany(team, folder)} Or have a file for each of them in a folder: --out FOLDER/`))
}

/** A plan is asked for by the lifter: a team's has as many as there are members, and each has other loads. */
function ofOneLifter(plan: Plan, folder: Folder): Plan {
	const [first, second] = folder.plansIn(plan)
	if (first && !second) return first
	throw new Refusal(plain(oneOfMany(plan, folder)))
}

function oneOfMany(plan: Plan, folder: Folder): string {
	const whose = plan.lifter.text
	const names = folder.plansIn(plan).map(one => one.name.text)
	const choice = names.length === 0 ? `${whose} has no members yet` : `Ask for one of them: ${listed(names)}`
	return `"${plan.name.text}" is a plan for each member of ${whose}. ${choice}.`
}

function suggestion(name: string, names: readonly string[]): string {
	const near = nearest(name, names)
	if (near !== undefined) return `Did you mean "${near}"?`
	if (names.length === 0) return 'The workspace has none; say where it is with --workspace.'
	return `There ${names.length === 1 ? 'is' : 'are'}: ${listed(names)}.`
}

function listed(names: readonly string[]): string {
	const more = names.length > mostNames ? ` and ${names.length - mostNames} more` : ''
	return `${names.slice(0, mostNames).join(', ')}${more}`
}
