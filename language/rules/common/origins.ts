import type { Definition } from '../../model/definitions.ts'
import type { Programme } from '../../model/programme.ts'

/** Where a fact of a definition comes from, for messages: the source that it names, else the definition itself. */
export function originOf(definition: Definition, programme: Programme): string {
	const written = definition.source?.text
	if (written !== undefined) return written
	return programme.isBuiltIn(definition) ? 'common practice' : `${definition.kind} ${definition.name.text}`
}
