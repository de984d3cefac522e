// npm run generate: the parser and the tree's types, made from the grammar.
import { generate } from './needs/grammar.mjs'
import { script } from './script.mjs'

await script(generate)
