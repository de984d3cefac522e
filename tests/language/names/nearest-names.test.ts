import { describe, expect, test } from 'vitest'
import { nearestNames } from '../../../language/names/nearest.ts'

const movements = [
	'deadlift',
	'pause-deadlift',
	'back-squat',
	'front-squat',
	'box-squat',
	'goblet-squat',
	'plank',
	'side-plank',
	'row',
]

describe('the names that another may stand for', () => {
	test.each<[string, string[]]>([
		['dedlift', ['deadlift']],
		['plonk', ['plank']],
		// A slip comes before a longer name with the same word.
		['plank', ['plank', 'side-plank']],
		['squat', ['back-squat', 'box-squat', 'front-squat']],
		['strict-row', ['row']],
		['bench-press', []],
		['xy', []],
		['', []],
	])('%s: %j', (name, expected) => {
		expect(nearestNames(name, movements)).toEqual(expected)
	})
})
