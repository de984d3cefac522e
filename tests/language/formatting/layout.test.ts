import { describe, expect, test } from 'vitest'
import { formatEdits, formatText } from '../../../language/formatting/format.ts'
import { TextReader } from '../../../language/workspace/text-file.ts'

const reader = new TextReader()

/** Text of a test: without the first line break and the indentation of the source around it. */
function text(written: string): string {
	const lines = written
		.replace(/^\n/, '')
		.replace(/\n\t*$/, '\n')
		.split('\n')
	return lines.map(line => line.replace(/^\t+/, '')).join('\n')
}

function formats(written: string, to: string): void {
	const formatted = formatText(text(written), reader)
	expect(formatted).toBe(text(to))
	expect(formatText(formatted, reader)).toBe(formatted)
}

describe('lines', () => {
	test('a text without any layout gets all of it', () => {
		formats(
			`
			block hinge "Hinge" weeks 5 deload week 5 with 60% of sets at 90% of load targets deadlift session pull
			"Pull" on monday note "Straps stay in the bag." main deadlift week 1: 4 x 5 at 70% week 2-4: 4 x 5 at
			75% note "From a dead stop." accessory plank 3 x 30 s each week add 5 s session squats on day 2 main back-squat
			plan mara for mara-lind start 2026-10-05 run hinge swap plank for rollout allow frequency-cap because "camp" meet 2026-11-28
			log mara-lind on 2026-10-05 session pull did deadlift 4 x 5 at 112.5 kg felt 7 for 70 min cleared on 2026-10-06
			`,
			`
			block hinge "Hinge"
			  weeks 5
			  deload week 5 with 60% of sets at 90% of load
			  targets deadlift

			  session pull "Pull" on monday
			    note "Straps stay in the bag."
			    main deadlift
			      week 1:   4 x 5 at 70%
			      week 2-4: 4 x 5 at 75%
			      note "From a dead stop."
			    accessory plank 3 x 30 s
			      each week add 5 s

			  session squats on day 2
			    main back-squat

			plan mara for mara-lind
			  start 2026-10-05
			  run hinge
			    swap plank for rollout
			    allow frequency-cap because "camp"
			  meet 2026-11-28

			log mara-lind
			  on 2026-10-05 session pull
			    did deadlift 4 x 5 at 112.5 kg
			    felt 7 for 70 min
			  cleared on 2026-10-06
			`,
		)
	})

	test('a plan for a team, with lines for its members', () => {
		formats(
			`
			plan winter for first-platform start 12 week before 2026-12-19 for tom-aas start 2026-10-05 note "After exams."
			run wave 2 times from 2026-10-05 each time add 2.5 kg pause 2026-10-19 to 2026-11-01 because "flu" for per-holst
			swap plank for rollout 4x10 rir 2 in weeks 2-3 because "travel" move pull from 2026-10-07 to 2026-10-09 meet 2026-12-12
			for mara-lind drop plank run peak meet 2026-12-19 "Cup"
			`,
			`
			plan winter for first-platform
			  start 12 weeks before 2026-12-19
			  for tom-aas
			    start 2026-10-05
			    note "After exams."
			  run wave 2 times from 2026-10-05, each time add 2.5 kg
			    pause 2026-10-19 to 2026-11-01 because "flu"
			    for per-holst
			      swap plank for rollout 4 x 10 rir 2 in week 2-3 because "travel"
			      move pull from 2026-10-07 to 2026-10-09
			      meet 2026-12-12
			    for mara-lind
			      drop plank
			  run peak
			  meet 2026-12-19 "Cup"
			`,
		)
	})

	test('blank lines: one between definitions and before a session, none below a header, else at most one', () => {
		formats(
			`


			movement one "One"

			  pattern hinge



			  trains drive
			movement two "Two"
			block three "Three"
			  session a on monday

			    main one

			      week 1: 4 x 5

			    main two


			  session b on tuesday


			`,
			`
			movement one "One"
			  pattern hinge

			  trains drive

			movement two "Two"

			block three "Three"

			  session a on monday
			    main one
			      week 1: 4 x 5

			    main two

			  session b on tuesday
			`,
		)
	})

	test('white space of any kind is plain spaces', () => {
		formats(
			'movement\u00a0one\t\u2003"One"\u2028pattern\u200b hinge\ufeff\u3000trains drive',
			'movement one "One"\n  pattern hinge\n  trains drive\n',
		)
	})

	test.each(['', ' ', '\n', '\r\n \t\r\n', '\ufeff', '\ufeff\n\n'])('a text without a word has no line: %j', blank => {
		expect(formatText(blank, reader)).toBe(blank.startsWith('\ufeff') ? '\ufeff' : '')
	})
})

describe('comments', () => {
	test('stay on their lines, before and behind what they are about', () => {
		formats(
			`
			   // The file.

			     // The block.
			  /* And more. */
			block b "B"   // header
			 weeks 5 /* five */
			     // The session.
			 session s on monday /* a */ /* b */ // c
			   /* first */ main deadlift
			 // The week.
			   week 1: 4 x 5 // light
			   /* skipped: */ week 2: skip
			// The end.
			`,
			`
			// The file.

			// The block.
			/* And more. */
			block b "B" // header
			  weeks 5   /* five */

			  // The session.
			  session s on monday /* a */ /* b */ // c
			    /* first */ main deadlift
			      // The week.
			      week 1: 4 x 5 // light
			      /* skipped: */ week 2: skip
			// The end.
			`,
		)
	})

	test('stay within a line, which then goes on below', () => {
		formats(
			`
			block b "B"
			  session s on monday
			    main /* heavy */ deadlift // the big one
			    // as agreed
			    4 x 5 /* all
			       the way */ at 70%
			    accessory plank
			      week 1:
			        // short
			        3 x 30 s
			      week 2-3: /* long */ 3 x 45 s
			`,
			`
			block b "B"

			  session s on monday
			    main /* heavy */ deadlift // the big one
			        // as agreed
			        4 x 5 /* all
			       the way */ at 70%
			    accessory plank
			      week 1:
			          // short
			          3 x 30 s
			      week 2-3: /* long */ 3 x 45 s
			`,
		)
	})

	test('set in deeper than what follows they belong to what is above', () => {
		formats(
			`
			block b "B"
			    weeks 3
			    // targets deadlift

			    session s on monday
			        main deadlift
			            week 1: 4 x 5
			            // week 2: 4 x 4
			        // accessory plank
			    session t on friday
			        main back-squat
			            week 1: 4 x 5
			            // week 2: 4 x 4
			    // session u on sunday

			// The next one.
			block c "C"
			`,
			`
			block b "B"
			  weeks 3
			  // targets deadlift

			  session s on monday
			    main deadlift
			      week 1: 4 x 5
			      // week 2: 4 x 4
			    // accessory plank

			  session t on friday
			    main back-squat
			      week 1: 4 x 5
			      // week 2: 4 x 4
			  // session u on sunday

			// The next one.
			block c "C"
			`,
		)
	})

	test('in a text that is not set in they belong to what follows', () => {
		formats(
			`
			block b "B"
			session s on monday
			// The main lift.
			main deadlift
			week 1: 4 x 5
			// The small one.
			accessory plank
			// The other day.
			session t on friday
			// The end.
			`,
			`
			block b "B"

			  session s on monday
			    // The main lift.
			    main deadlift
			      week 1: 4 x 5
			    // The small one.
			    accessory plank

			  // The other day.
			  session t on friday
			// The end.
			`,
		)
	})

	test('lose nothing but the spaces behind them', () => {
		formats('//  a\tb   \n/*  c\n\td  */\t\nmovement m "M"  //e  ', '//  a\tb\n/*  c\n\td  */\nmovement m "M" //e\n')
	})
})

describe('columns', () => {
	test('what is done in the weeks of an item stands under each other', () => {
		formats(
			`
			block b "B"
			  session s on monday
			    main deadlift
			      week 1: 4 x 5
			      note "Heavy."
			      week 10-12, 14: 4 x 4
			    main back-squat
			      week 1-2: 4 x 5
			      week 3: skip
			    main bench-press
			      week 1: 4 x 5
			`,
			`
			block b "B"

			  session s on monday
			    main deadlift
			      week 1:         4 x 5
			      note "Heavy."
			      week 10-12, 14: 4 x 4
			    main back-squat
			      week 1-2: 4 x 5
			      week 3:   skip
			    main bench-press
			      week 1: 4 x 5
			`,
		)
	})

	test('comments behind lines that follow each other stand under each other, wide letters and emoji counted as two', () => {
		formats(
			`
			lifter l "木村美 💪🏽" // title
			  bodyweight 70 kg // today

			  best deadlift 100 kg // old
			  best back-squat 100 kg
			  best bench-press 60 kg // new
			  note "e\u0301e\u0301" // accents
			`,
			`
			lifter l "木村美 💪🏽" // title
			  bodyweight 70 kg   // today

			  best deadlift 100 kg // old
			  best back-squat 100 kg
			  best bench-press 60 kg // new
			  note "e\u0301e\u0301"              // accents
			`,
		)
	})

	test('one long line does not push the others away', () => {
		formats(
			`
			movement m "M" // a
			  pattern hinge // b
			  note "This note is much longer than all the other lines of the movement are." // c
			  trains drive // d
			`,
			`
			movement m "M"  // a
			  pattern hinge // b
			  note "This note is much longer than all the other lines of the movement are." // c
			  trains drive // d
			`,
		)
	})
})

describe('what does not read', () => {
	test('stays as it is, with what stands in it; the rest is laid out', () => {
		formats(
			`
			movement one "One"
			    pattern hinge
			// About two.
			   block two "Two"
			 session  s on monday   // day
			     main deadlift 4 y 5
			     // accessory plank

			     // Three was better.
			// About three.
			movement three "Three"
			    pattern hinge
			`,
			`
			movement one "One"
			  pattern hinge

			// About two.
			   block two "Two"
			 session  s on monday   // day
			     main deadlift 4 y 5
			     // accessory plank

			     // Three was better.

			// About three.
			movement three "Three"
			  pattern hinge
			`,
		)
	})

	test.each([
		['a name of other letters', 'movement  木村 "One"\n    pattern  hinge'],
		['a text without its end', 'movement  one "One\n    pattern  hinge'],
		['a comment without its end', 'movement  one "One"\n    pattern  hinge /* more'],
		['characters that mean nothing', 'movement  one "One"\n    pattern  hinge\n\n  @#$%'],
		['a misspelt definition word', 'movment  first "First"\n    pattern  hinge'],
		['a missing number', 'block  one "One" session s on monday main deadlift 4x'],
		['a plan for no one', 'plan  one\n    start 2026-10-05'],
	])('%s', (_, faulty) => {
		const before = '   // Before.\nmovement zero "Zero" pattern hinge\n\n\n'
		const after = '\nmovement two "Two" pattern hinge\n\n\n'
		expect(formatText(before + faulty + after, reader)).toBe(
			`// Before.\nmovement zero "Zero"\n  pattern hinge\n\n${faulty}\n\nmovement two "Two"\n  pattern hinge\n`,
		)
	})

	test('before the first definition', () => {
		formats('  @@ // what?\n  \nmovement one "One"\n pattern hinge', '  @@ // what?\n\nmovement one "One"\n  pattern hinge\n')
	})
})

describe('line breaks and the byte-order mark', () => {
	test.each([
		['LF', '\n', '\n'],
		['CRLF', '\r\n', '\r\n'],
		['CR alone', '\r', '\n'],
	])('%s', (_, written, ours) => {
		const formatted = formatText(['// One.', 'movement one "One"', '', '', ' pattern hinge'].join(written), reader)
		expect(formatted).toBe(['// One.', 'movement one "One"', '  pattern hinge', ''].join(ours))
	})

	test('what there is more of', () => {
		expect(formatText('movement one "One"\r\n pattern hinge\r\n trains drive\n role main', reader)).toBe(
			'movement one "One"\r\n  pattern hinge\r\n  trains drive\r\n  role main\r\n',
		)
	})

	test('the breaks in a comment stay, and count only where there are no others', () => {
		expect(formatText('/* a\r\nb */ movement one "One"', reader)).toBe('/* a\r\nb */ movement one "One"\r\n')
		expect(formatText('/* a\r\nb\r\nc\r\nd */ movement one "One"\n', reader)).toBe('/* a\r\nb\r\nc\r\nd */ movement one "One"\n')
	})

	test('a byte-order mark stays', () => {
		expect(formatText('\ufeff  // One.\n\n\n movement one "One"', reader)).toBe('\ufeff// One.\n\nmovement one "One"\n')
	})
})

describe('a part of a text', () => {
	const written =
		'movement one "One"\n    pattern  hinge\n    trains  drive\n    note "Both."\nmovement two "Two"\n    pattern squat'
	const trains = written.indexOf('    trains')
	const note = written.indexOf('    note')

	test.each([
		['a place in a line', trains + 6, trains + 6],
		['a part of a line', trains + 6, trains + 8],
		['a line without its end', trains, note - 1],
		['a line with its end', trains, note],
	])('%s: only that line is changed', (_, start, end) => {
		const edits = formatEdits(written, reader, { start, end })
		expect(edits).toEqual([
			{ span: { start: trains - 1, end: trains + 4 }, text: '\n  ' },
			{ span: { start: trains + 10, end: trains + 12 }, text: ' ' },
		])
	})

	test('all of it', () => {
		const all = { start: 0, end: written.length }
		expect(formatEdits(written, reader, all)).toEqual(formatEdits(written, reader))
	})

	test('what reads well already has no change', () => {
		expect(formatEdits(formatText(written, reader), reader)).toEqual([])
	})
})
