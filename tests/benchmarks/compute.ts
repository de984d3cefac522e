import { schedulePlan } from '../../language/compute/schedule.ts'
import type { ScheduledSet } from '../../language/model/schedule.ts'
import { Folder } from '../../language/workspace/folder.ts'
import { TextReader } from '../../language/workspace/text-file.ts'
import { seeded } from './seeded.ts'

/**
 * The compute core alone, in a process of its own: the loads of 1,000 plans of 12 weeks, each for a lifter with bests of her own, in four
 * gyms. Texts are read before the clock starts. What comes out is checked, and printed as JSON.
 */
const planCount = 1000

const gyms = Array.from(
	{ length: 4 },
	(_, index) => `gym hall-${index}
  bar barbell ${index === 3 ? 15 : 20} kg
  plates 25 kg x ${4 + 2 * index}, 20 kg x 4, 15 kg x 2, 10 kg x 4, 5 kg x 4, 2.5 kg x 4, 1.25 kg x 4${index === 2 ? ', 0.5 kg x 2' : ''}
  collars ${index === 1 ? 5 : 2.5} kg
  dumbbells 2-50 kg by 2 kg
  stack lat-pulldown 5-100 kg by 5 kg`,
)

/** Percents, back-offs, efforts, ramps, ranges, deloads and progression: every way to a load. */
const block = `block long-way
  weeks 12
  deload week 4, 8, 12 with 60% of sets at 90% of load

  session pull on monday
    warm-up deadlift
    main deadlift 4 x 5 at 65%
      each week add 2%
      week 11: 1 x 2 at 90%, 3 x 3 at 90% of top set
    accessory romanian-deadlift 3 x 8 at 50% tempo 4-1-1-0
      each week add 2.5 kg
    accessory lat-pulldown 3 x 10-12 at 40 kg
    accessory plank 3 x 30 s
      each week add 5 s

  session squat on wednesday
    warm-up back-squat
    main back-squat ramp 5 x 4 from 60% to 78%
      each week add 1%
    main bench-press 4 x 6 rpe 7-8
    accessory dumbbell-bench-press 3 x 10 at 20 kg

  session press on saturday
    warm-up bench-press
    main bench-press 1 x 3 at 82.5%, 4 x 5 at 88% of top set
    accessory back-squat 3 x 8 at 10 rm
      with the item above
    accessory pull-up 4 x 5 at bodyweight + 5 kg`

const random = seeded(1)
const between = (least: number, steps: number) => least + 2.5 * Math.floor(random() * steps)
const people = Array.from(
	{ length: planCount },
	(_, index) => `lifter lifter-${index}
  trains at hall-${index % gyms.length}
  bodyweight 80 kg
  best deadlift ${between(120, 60)} kg x ${1 + (index % 5)} on 2026-09-01
  best back-squat ${between(100, 50)} kg on 2026-09-01
  best bench-press ${between(70, 30)} kg x 3 rpe 9 on 2026-09-01
plan plan-${index} for lifter-${index}
  start 2026-10-05
  run long-way`,
)

const folder = new Folder(new TextReader())
for (const [index, text] of [...gyms, block, ...people].entries()) {
	const faults = folder.setFile(`file:///${index}.stave`, text).parts.flatMap(part => part.faults)
	if (faults.length > 0) throw new Error(`a text to measure does not read: ${faults[0]!.message}`)
}

const plans = folder.all('plan')
const collect = globalThis.gc ?? (() => undefined)
collect()
const memoryBefore = process.memoryUsage().heapUsed
const start = performance.now()
const schedules = plans.map(plan => schedulePlan(plan, folder))
const milliseconds = performance.now() - start
collect()
const megabytes = (process.memoryUsage().heapUsed - memoryBefore) / 2 ** 20

const sessions = schedules.flatMap(schedule => schedule.sessions)
if (plans.length !== planCount || sessions.length !== planCount * 12 * 3) throw new Error(`${sessions.length} sessions came out`)
const sets = sessions.flatMap(session =>
	session.items.flatMap(item => item.sets.map(set => ({ set, session, name: item.movementName.text }))),
)
for (const { set, session, name } of sets) {
	const wrong = whatIsWrong(set, session.gym?.bars[0]?.mass.amount.add(session.gym.collars?.value.amount ?? 0))
	if (wrong !== undefined) throw new Error(`${session.date} ${name}: ${wrong}`)
}
console.log(JSON.stringify({ plans: plans.length, sets: sets.length, milliseconds, megabytes }))

/** A load is known, and is the empty bar and its discs twice over; without micro-plates it is a hair's breadth from what was asked. */
function whatIsWrong({ load: asked, computed }: ScheduledSet, emptyBar: ScheduledSet['computed']['load']): string | undefined {
	if (asked.kind === 'none') return undefined
	const { load, exact, perSide, reason } = computed
	if (load === undefined || exact === undefined) return reason ?? 'a load is not known'
	if (perSide === undefined) return undefined
	const onBar = perSide.reduce((sum, disc) => sum.add(disc.mul(2)), emptyBar ?? exact)
	if (!onBar.equals(load)) return `bar and discs are ${onBar.toString()}, the load is ${load.toString()}`
	// With these discs, steps are 2.5 kg: no nearest load is more than half of that away, but under the empty bar and over all discs.
	const isFar = load.sub(exact).abs().compare(1.25) > 0
	return isFar && !computed.under && !computed.beyond ? `${load.toString()} is not near ${exact.toString()}` : undefined
}
