/** Each would leave its trace in a page that takes it for more than text. */
const markup = `"><script>ran(1)</script><img src=x onerror=ran(2)></style>'`
const link = '[read](javascript:ran(3)) [more](command:barstave.showLog) $(trash)'
const inQuotes = `"${markup.replaceAll('"', '\\"')}"`

/**
 * Such words wherever a person may write some: titles of every kind, notes, reasons, cautions, and what hurt. Problems of these files stand
 * below those of the club, by their folder's name.
 */
const files = {
	'visitors/hostile.stave': `gym hostile-gym ${inQuotes}
  bar barbell 20 kg
lifter guest-hostile ${inQuotes}
  trains at hostile-gym
  best hostile-lift 100 kg on 2026-09-12
  available monday
  fails hostile-lift with hostile-break above 80%
plan hostile-plan ${inQuotes} for guest-hostile
  start 2026-10-05
  run hostile-block
    add accessory plank 3 x 30 s to hostile-day because ${inQuotes}
  pause 2026-10-12 to 2026-10-18 because ${inQuotes}
  meet 2026-10-31 ${inQuotes}
team hostile-team ${inQuotes}
  members guest-hostile
log guest-hostile
  on 2026-10-05 session hostile-day
    did hostile-lift 3 x 5 at 70 kg broke with hostile-break
    hurt ${inQuotes}
    note ${inQuotes}
    felt 7 for 40 min
  on 2026-10-19 missed hostile-day because ${inQuotes}
`,
	// The name of a file is somebody's text too.
	'visitors/<img src=x onerror=ran(4)>.stave': `movement hostile-lift ${inQuotes}
  pattern hinge
  equipment barbell
  trains drive
  muscles glutes 1
  at most 1 session a week
  percent of deadlift
breakdown hostile-break ${inQuotes}
  weak link stability
  needs stability 6 sets a week
  caution ${inQuotes}
block hostile-block "${link}"
  weeks 2
  targets hostile-lift
  answers hostile-break
  requires plank held 45 s
  session hostile-day ${inQuotes} on monday
    note ${inQuotes}
    main hostile-lift 3 x 5 at 70%
      note "${link}"
      allow missing-drive-work because ${inQuotes}
      week 5: 3 x 5 at 75%
`,
} as const

/** A workspace of somebody who means no good, and what to look at in it. */
export const hostile = {
	files,
	/** Where the names to rest on stand. */
	file: 'visitors/hostile.stave',
	markup,
	plan: 'hostile-plan',
	/** What is picked in the preview, and the heading that it has then. */
	views: [
		{ choice: `${markup} · ${markup}`, heading: markup },
		{ choice: `Block · ${link}`, heading: link },
		{ choice: `Team · ${markup}`, heading: markup },
		{ choice: `Log · ${markup}`, heading: markup },
	],
	names: [
		{ at: 'guest-hostile', after: 'for ', shows: markup },
		{ at: 'hostile-block', after: 'run ', shows: '[read](javascript:ran(3))' },
	],
} as const
