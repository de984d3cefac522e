/** Each would leave its trace in a page that takes it for more than text. */
const markup = '<script>ran(1)</script><img src=x onerror=ran(2)></style>'
const link = '[read](javascript:ran(3)) [more](command:barstave.showLog) $(trash)'

const text = `lifter guest-hostile '${markup}'
  trains at north-hall
  best deadlift 100 kg on 2026-09-12
  available monday
block hostile-block '${link}'
  weeks 1
  session hostile-day '${markup}' on monday
    main deadlift 3 x 5 at 70%
plan hostile-plan '${markup}' for guest-hostile
  start 2026-10-05
  run hostile-block
`.replaceAll("'", '"')

/** A text of somebody who means no good, and where to rest on it. */
export const hostile = {
	file: 'guests/hostile.stave',
	text,
	plan: 'hostile-plan',
	title: markup,
	names: [
		{ at: 'guest-hostile', after: 'for ', shows: markup },
		{ at: 'hostile-block', after: 'run ', shows: '[read](javascript:ran(3))' },
	],
}
