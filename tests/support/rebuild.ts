/**
 * The invented lifter, gym, block and plan that the language's pages show, cut to what the reports need. The discs of the hall are those
 * of the pages.
 */
export const rebuild = `
movement deadlift "Deadlift"
  pattern hinge
  trains drive
  muscles glutes 1, hamstrings 1, erectors 0.5
  equipment barbell

movement back-squat "Back squat"
  trains drive
  muscles quads 1, glutes 0.5
  equipment barbell

movement strict-bent-row "Strict bent-over row"
  trains stability
  muscles upper-back 1, erectors 0.5
  equipment barbell

movement romanian-deadlift "Romanian deadlift"
  trains stability, drive
  muscles hamstrings 1, glutes 0.5
  equipment barbell
  percent of deadlift

movement suitcase-hold "Suitcase hold"
  trains stability
  muscles obliques 1
  equipment dumbbell

movement plank "Plank"
  trains stability
  muscles abdominals 1

gym north-hall "North Hall"
  bar barbell 20 kg
  plates 25 kg x 4, 20 kg x 2, 15 kg x 2, 10 kg x 4, 5 kg x 4, 2.5 kg x 4, 1.25 kg x 4
  collars 2.5 kg
  dumbbells 2-50 kg by 2 kg

lifter mara-lind "Mara Lind"
  trains at north-hall
  bodyweight 68.4 kg
  best deadlift 160 kg on 2026-09-12
  best back-squat 112.5 kg x 3 rpe 9 on 2026-09-01

block hinge-rebuild "Hinge rebuild"
  weeks 5
  deload week 5 with 60% of sets at 90% of load

  session heavy-pull "Heavy pull" on monday
    note "Straps stay in the bag."
    main deadlift
      week 1: 4 x 5 at 70%
      week 2: 4 x 5 at 72.5%
      week 3: 4 x 4 at 76% rest 3 min
      week 4: 1 x 3 at 80%, 3 x 3 at 92% of top set
      note "Every rep from a dead stop."
    accessory strict-bent-row 6 x 12 at 40 kg tempo 2-1-2-1
    accessory plank 3 x 30 s rest 60 s
      each week add 5 s

  session squat-day on wednesday
    main back-squat
      week 1-3: 4 x 5 at 70%
      week 4: 4 x 4 at 75%
    accessory romanian-deadlift 3 x 8 at 50% tempo 4-1-1-0 rest 2 min
      each week add 2.5 kg
    accessory suitcase-hold 3 x 30 s at 24 kg each side

plan mara-autumn for mara-lind
  start 2026-10-05
  run hinge-rebuild
`
