import type { DefinitionKind } from '../../model/definitions.ts'
import type { Programme } from '../../model/programme.ts'

/** What people see of a name: its title, where it has one. */
export function titleOf(kind: DefinitionKind, name: string, programme: Programme): string {
	return programme.find(kind, name)?.title?.text ?? name
}
