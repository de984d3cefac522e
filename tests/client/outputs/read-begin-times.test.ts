import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { readBeginTimes } from '../../../client/outputs/read-begin-times.ts'

const at = (hour: number, minute = 0) => hour * 60 + minute
const always = { weekday: null, part: null }

describe('when sessions begin', () => {
	it.each([
		['17:30', [{ ...always, minutes: at(17, 30) }]],
		['7:05', [{ ...always, minutes: at(7, 5) }]],
		['00:00', [{ ...always, minutes: 0 }]],
		['23:59', [{ ...always, minutes: at(23, 59) }]],
		['morning 07:00', [{ weekday: null, part: 'morning', minutes: at(7) }]],
		['Saturday 10:00', [{ weekday: 'saturday', part: null, minutes: at(10) }]],
		['saturday evening 18:00', [{ weekday: 'saturday', part: 'evening', minutes: at(18) }]],
		['evening: 18:30', [{ weekday: null, part: 'evening', minutes: at(18, 30) }]],
		['evening at 18:30', [{ weekday: null, part: 'evening', minutes: at(18, 30) }]],
		['18:30 evening', [{ weekday: null, part: 'evening', minutes: at(18, 30) }]],
		['6:30 pm', [{ ...always, minutes: at(18, 30) }]],
		['6:30pm', [{ ...always, minutes: at(18, 30) }]],
		['evening 7 p.m.', [{ weekday: null, part: 'evening', minutes: at(19) }]],
		['7pm', [{ ...always, minutes: at(19) }]],
		['12 PM', [{ ...always, minutes: at(12) }]],
		['12:15 am', [{ ...always, minutes: at(0, 15) }]],
		[
			' 17:30 ,morning  7:00;  evening 18:30, ',
			[
				{ ...always, minutes: at(17, 30) },
				{ weekday: null, part: 'morning', minutes: at(7) },
				{ weekday: null, part: 'evening', minutes: at(18, 30) },
			],
		],
	])('is read from "%s"', (text, times) => {
		expect(readBeginTimes(text)).toEqual({ times })
	})

	it.each([
		['7', ['7:00', '19:00']],
		['19.30', ['19:30']],
		['7.30', ['7:30', '19:30']],
		['1930', ['19:30']],
		['19h30', ['19:30']],
		['18 Uhr', ['18:00']],
		['12', ['12:00']],
		['noon', ['12:00']],
		['saturday noon', ['saturday 12:00']],
		['midnight', ['0:00']],
		// A part of the day says which half is meant, also where the time is one.
		['evening 7', ['evening 19:00']],
		['morning 7', ['morning 7:00']],
		['evening 6:30', ['evening 18:30']],
		['morning 19:00', ['morning 7:00']],
		['evening 6:30 am', ['evening 18:30']],
		['sat 10:00', ['saturday 10:00']],
		['tuseday 17:30', ['tuesday 17:30']],
		['evenings 18.30', ['evening 18:30']],
		// Nothing is likely.
		['25:00', []],
		['17:60', []],
		['24:00', []],
		['13:00 pm', []],
		['0:30 am', []],
		['17:30-19:00', []],
		['after work', []],
		['monday', []],
		['monday tuesday 17:30', []],
		['morning evening 12:00', []],
		['morning 12:30', []],
		['-5:00', []],
		['', []],
		[' , ', []],
	])('is not read from "%s", and what is likely is proposed', (written, meant) => {
		expect(readBeginTimes(written)).toEqual({ fault: { kind: 'unclear', written, meant } })
	})

	it('may stand once for the same sessions', () => {
		expect(readBeginTimes('17:30, saturday 10:00, 6 pm')).toEqual({ fault: { kind: 'twice', written: '6 pm', other: '17:30' } })
		expect(readBeginTimes('saturday 10:00, saturday morning 8:00')).toHaveProperty('times')
	})

	it('is told of the first entry that is unclear', () => {
		expect(readBeginTimes('17:30, evening 7, noon')).toMatchObject({ fault: { written: 'evening 7' } })
	})
})

test('what is proposed can be read, whatever is written', () => {
	const piece = fc.oneof(
		fc.constantFrom(
			'7',
			'19',
			'.',
			':',
			'30',
			' ',
			'pm',
			'a.m.',
			'morning',
			'evening',
			'sat',
			'noon',
			'Uhr',
			',',
			'at',
			'12',
			'0',
		),
		fc.string({ unit: 'grapheme', maxLength: 3 }),
	)
	let proposed = 0
	fc.assert(
		fc.property(fc.array(piece, { maxLength: 6 }), pieces => {
			const read = readBeginTimes(pieces.join(''))
			if ('times' in read) {
				for (const { minutes } of read.times) expect(minutes >= 0 && minutes < 24 * 60 && Number.isInteger(minutes)).toBe(true)
			} else if (read.fault.kind === 'unclear') {
				for (const one of read.fault.meant) {
					proposed++
					expect(readBeginTimes(one)).toHaveProperty('times')
				}
			}
		}),
		{ numRuns: 3000 },
	)
	expect(proposed).toBeGreaterThan(100)
})
