import type { Part } from '../language/model/reading.ts'
import { DefinitionParser, type Parsed } from '../language/parser/parse.ts'
import { splitDefinitions } from '../language/parser/split.ts'
import type { TextReader } from '../language/workspace/text-file.ts'

/** The trees of a part's text as the grammar has them, for what looks at single words; positions count from `start` of each in the part. */
export function treesOf({ text }: Part, reader: TextReader): Parsed[] {
	const parser = new DefinitionParser(reader.grammarServices)
	return splitDefinitions(reader.tokenize(text).tokens, text.length).flatMap(stretch =>
		parser
			.parse(stretch, text)
			.map(parsed => ({ ...parsed, start: stretch.start + parsed.start, end: stretch.start + parsed.end })),
	)
}
