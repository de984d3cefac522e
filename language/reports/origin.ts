import type { Definition } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'

/** Where a fact of a definition comes from: the source that it names, else "common practice" for built-in ones, else `null`: the coach's own text. */
export function sourceOf(definition: Definition, programme: Programme): string | null {
	return definition.source?.text ?? (programme.isBuiltIn(definition) ? 'common practice' : null)
}
