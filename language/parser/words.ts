import { definitionKinds } from '../model/definitions.ts'

/** The eleven words that begin a definition. They are the only words that may never be a name. */
export const reservedWords: ReadonlySet<string> = new Set(definitionKinds)

/** After these stands the name of a definition, a session or a movement, and nothing else. */
export const wordsBeforeADefinedName: ReadonlySet<string> = new Set([
	...reservedWords,
	...[
		'run',
		'swap',
		'drop',
		'scale',
		'step',
		'best',
		'base',
		'fails',
		'keep',
		'passed',
		'requires',
		'avoid',
		'targets',
		'answers',
	],
	...[
		'members',
		'did',
		'main',
		'accessory',
		'warm-up',
		'conditioning',
		'test',
		'missed',
		'session',
		'turn',
		'move',
		'allow',
		'pattern',
	],
])
