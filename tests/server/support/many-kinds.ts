/** A text with everything in it that an outline shows and that folds. */
export const manyKinds = `/* 😀😀 漢 é
   of two lines */
progression way "Way"
  step plank
  step weighted-plank after plank held 45 s
team band "Band"
  members ann, bo
block week "Week"
  weeks 1
  session a "First 😀" on monday evening, thursday
    main deadlift
      week 1: 3 x 5 at 70%
    accessory plank 3 x 30 s
  session b
plan winter for band
  start 2026-10-05
  for ann
    start 2026-10-12
  run week
    for ann
      drop plank
    for bo
      swap plank for side-plank
  run week from 2026-11-02
  for bo
    days monday
log ann
  on 2026-10-05 session a
    did deadlift 3 x 5 at 70 kg
  on 2026-10-08 missed a because "work"
`
