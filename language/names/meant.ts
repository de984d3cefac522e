import type { Definition, DefinitionKind, DefinitionOf } from '../model/definitions.ts'
import type { Reference } from '../model/reading.ts'

/** Where names are looked up. */
interface Names {
	find<K extends DefinitionKind>(kind: K, name: string): DefinitionOf<K> | undefined
}

/** The definition that a name stands for: where two kinds may stand, the first that has it. */
export function meantBy(reference: Reference, names: Names): Definition | undefined {
	const { kind, orKind, name } = reference
	return names.find(kind, name) ?? (orKind && names.find(orKind, name))
}

/** Does it stand for a definition of that kind and name? */
export function means(reference: Reference, target: Definition, names: Names): boolean {
	if (reference.name !== target.name.text) return false
	return reference.kind === target.kind || (reference.orKind === target.kind && !names.find(reference.kind, reference.name))
}
