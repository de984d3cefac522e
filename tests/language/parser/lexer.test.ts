import { Lexer, type TokenType } from 'chevrotain'
import { expect, test } from 'vitest'
import { createBarstaveServices } from '../../../language/parser/services.ts'

test('the lexer looks at the first character of a word to know what it can be', () => {
	const { Grammar, parser } = createBarstaveServices()
	const tokens = parser.TokenBuilder.buildTokens(Grammar) as TokenType[]
	// It throws where a kind of token would have to be tried at every place.
	expect(() => new Lexer(tokens, { ensureOptimizations: true, positionTracking: 'full' })).not.toThrow()
})
