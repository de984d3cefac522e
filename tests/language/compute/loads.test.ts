import { describe, expect, it } from 'vitest'
import { decimal } from '../../../language/compute/exact.ts'
import { schedulePlan } from '../../../language/compute/schedule.ts'
import type { ScheduledSet } from '../../../language/model/schedule.ts'
import { planIn, workspaceOf } from '../../support/workspace.ts'

/** An invented hall, with plenty of discs. */
const hall = `
gym hall "Hall"
  bar barbell 20 kg
  bar safety-bar 25 kg
  plates 25 kg x 8, 20 kg x 2, 15 kg x 2, 10 kg x 4, 5 kg x 4, 2.5 kg x 4, 1.25 kg x 4
  collars 2.5 kg
  dumbbells 2-50 kg by 2 kg
  equipment pull-up-bar`

const movements = `
movement pull "Pull"
  equipment barbell
movement half-pull "Half pull"
  equipment barbell
  percent of pull at 80%
movement low-pull "Low pull"
  equipment barbell
  percent of pull
movement row "Row"
  equipment dumbbell
  load hands 2
movement hang "Hang"
  equipment pull-up-bar
  load added
movement belt-hang "Belt hang"
  equipment dumbbell
  load added
movement body-row "Body row"
movement beam "Beam"
  equipment stone-beam`

interface Setting {
	/** Lines of the lifter, beside the gym. */
	lifter?: string
	block?: string
	run?: string
	more?: string
	gym?: string
}

/** The sets of the first session of a plan whose block holds these items. */
function setsOf(
	items: string,
	{ lifter = 'best pull 160 kg on 2026-09-12', block = '', run = '', more = '', gym = 'hall' }: Setting = {},
) {
	const folder = workspaceOf(
		hall,
		movements,
		more,
		`lifter someone "Someone"\n${gym === '' ? '' : `trains at ${gym}`}\n${lifter}`,
		`block test-block\nweeks 2\n${block}\nsession one on monday\n${items}`,
		`plan test-plan for someone\nstart 2026-10-05\nrun test-block\n${run}`,
	)
	return schedulePlan(planIn(folder, 'test-plan'), folder).sessions[0]!.items.flatMap(item => item.sets)
}

/** "112 → 112.5", "?" where it is not known; a range with both ends. */
function load({ computed }: ScheduledSet): string {
	const { exact, exactTo, load: low, loadTo, reason } = computed
	const ends = (from: typeof exact, to: typeof exact) => `${from ? decimal(from) : '?'}${to ? `-${decimal(to)}` : ''}`
	return reason === undefined ? `${ends(exact, exactTo)} → ${ends(low, loadTo)}` : `${ends(exact, exactTo)} → ${reason}`
}

function loads(items: string, setting: Setting = {}): string[] {
	return setsOf(items, setting).map(load)
}

describe('a percent', () => {
	it('is taken of the best and put on the bar with the discs of the gym', () => {
		const [set] = setsOf('main pull 1 x 5 at 70%')
		// 70 % of 160 = 112; bar 20 + collars 2.5 + 2 × (25 + 20) = 112.5.
		expect(load(set!)).toBe('112 → 112.5')
		expect(set!.computed.perSide?.map(disc => decimal(disc))).toEqual(['25', '20'])
		expect(decimal(set!.computed.percent!.from)).toBe('70')
		// 112.5 of 160 are 70.3125 %.
		expect(decimal(set!.computed.percentOfBest!)).toBe('70.3125')
	})

	it('of a range is computed at both ends', () => {
		expect(loads('main pull 1 x 5 at 75-80%')).toEqual(['120-128 → 120-127.5'])
	})

	it('follows `percent of`, and its share', () => {
		// Half pull: 80 % of 160 = 128, 75 % of it 96.
		const [half, low] = setsOf('main half-pull 1 x 5 at 75%\nmain low-pull 1 x 5 at 75%')
		expect([load(half!), load(low!)]).toEqual(['96 → 95', '120 → 120'])
		expect(decimal(half!.computed.percent!.from)).toBe('75')
		expect(half!.computed.reference).toMatchObject({ movementName: 'pull', estimated: false })
	})

	it('never switches to the movement’s own best by itself', () => {
		expect(loads('main half-pull 1 x 5 at 75%', { lifter: 'best half-pull 100 kg on 2026-09-01' })).toEqual([
			'? → Someone has no best of Pull yet.',
		])
	})

	it('is taken of the latest best dated on or before the first day of the run', () => {
		const history =
			'best pull 150 kg on 2026-09-01\nbest pull 170 kg on 2026-10-06\nbest pull 160 kg on 2026-10-05\nbest pull 100 kg'
		expect(loads('main pull 1 x 5 at 50%', { lifter: history })).toEqual(['80 → 80'])
	})

	it('is taken of a best without a date where no dated one is known yet', () => {
		expect(loads('main pull 1 x 5 at 50%', { lifter: 'best pull 100 kg\nbest pull 170 kg on 2026-10-06' })).toEqual(['50 → 50'])
	})

	it('prefers a dated best, wherever it stands', () => {
		for (const lifter of [
			'best pull 100 kg\nbest pull 160 kg on 2026-09-01',
			'best pull 160 kg on 2026-09-01\nbest pull 100 kg',
		]) {
			expect(loads('main pull 1 x 5 at 50%', { lifter })).toEqual(['80 → 80'])
		}
	})

	it('says so where every best is later', () => {
		const [set] = setsOf('main pull 1 x 5 at 50%', { lifter: 'best pull 170 kg on 2026-10-06' })
		expect(set!.computed).toMatchObject({ missing: 'best', load: undefined })
		expect(set!.computed.reason).toBe('The bests of Pull are all dated after 2026-10-05, the first day of this block.')
	})
})

describe('a best that is written as a set', () => {
	it('is an estimate from its reps and its reserve', () => {
		// Epley: 112.5 × (1 + (3 + 1)/30) = 127.5; 70 % of it 89.25.
		const [set] = setsOf('main pull 1 x 5 at 70%', { lifter: 'best pull 112.5 kg x 3 rpe 9 on 2026-09-01' })
		expect(load(set!)).toBe('89.25 → 90')
		expect(set!.computed.reference).toMatchObject({ estimated: true, uncertain: false })
	})

	it('of one rep is the best itself', () => {
		const [set] = setsOf('main pull 1 x 5 at 50%', { lifter: 'best pull 100 kg x 1 on 2026-09-01' })
		expect(load(set!)).toBe('50 → 50')
		expect(set!.computed.reference).toMatchObject({ estimated: false })
	})

	it('is uncertain above 10 reps to failure', () => {
		const uncertain = (best: string) => setsOf('main pull 1 x 5 at 50%', { lifter: best })[0]!.computed.reference!.uncertain
		expect(uncertain('best pull 100 kg x 10 on 2026-09-01')).toBe(false)
		expect(uncertain('best pull 100 kg x 9 rir 2 on 2026-09-01')).toBe(true)
	})

	it('uses the formula of the limits', () => {
		// Brzycki: 100 × 36 ÷ (37 − 5) = 112.5.
		const more = 'limits house\nestimate with brzycki'
		expect(loads('main pull 1 x 5 at 100%', { lifter: 'best pull 100 kg x 5 on 2026-09-01', more })).toEqual(['112.5 → 112.5'])
	})

	it('is read in the plan’s unit without loss', () => {
		// 100 lb = 45.359237 kg.
		expect(loads('main pull 1 x 5 at 100%', { lifter: 'best pull 100 lb on 2026-09-01' })).toEqual(['45.359237 → 45'])
	})
})

describe('a base', () => {
	it('is a share of the best that `percent of` names', () => {
		// 92.5 % of 160 = 148; 80 % of it 118.4; 75 % of 80 % of it 88.8.
		const lifter = 'best pull 160 kg on 2026-09-12\nbase pull 92.5%'
		expect(loads('main pull 1 x 5 at 80% of base\nmain half-pull 1 x 5 at 75% of base', { lifter })).toEqual([
			'118.4 → 117.5',
			'88.8 → 90',
		])
	})

	it('is what every bare percent refers to where the block says so', () => {
		const lifter = 'best pull 160 kg on 2026-09-12\nbase pull 92.5%'
		const [set] = setsOf('main pull 1 x 5 at 80%', { lifter, block: 'percents of base' })
		expect(load(set!)).toBe('118.4 → 117.5')
		// 118.4 of 160: what the limits look at is the best.
		expect(decimal(set!.computed.percent!.from)).toBe('74')
	})

	it('in kilograms needs no best', () => {
		expect(loads('main pull 1 x 5 at 80% of base', { lifter: 'base pull 100 kg' })).toEqual(['80 → 80'])
	})

	it('that is not written is not known', () => {
		const [set] = setsOf('main pull 1 x 5 at 80% of base')
		expect(set!.computed).toMatchObject({ missing: 'base', reason: 'Someone has no base of Pull.' })
	})
})

describe('a share of the top set', () => {
	it('is taken of the heaviest load on the bar', () => {
		// Top: 80 % of 160 = 128, on the bar 127.5; 92 % of that 117.3.
		expect(loads('main pull 1 x 3 at 70%, 1 x 3 at 80%, 2 x 3 at 92% of top set')).toEqual([
			'112 → 112.5',
			'128 → 127.5',
			'117.3 → 117.5',
			'117.3 → 117.5',
		])
	})

	it('has both ends where the top set has', () => {
		// 90 % of 120 = 108 and of 127.5 = 114.75.
		expect(loads('main pull 1 x 3 at 75-80%, 1 x 3 at 90% of top set')[1]).toBe('108-114.75 → 107.5-115')
	})

	it('of an unknown top set is unknown for the same reason', () => {
		expect(loads('main pull 1 x 3 at 80%, 1 x 3 at 90% of top set', { lifter: '' })).toEqual([
			'? → Someone has no best of Pull yet.',
			'? → Someone has no best of Pull yet.',
		])
	})

	it('without a top set is unknown', () => {
		const [set] = setsOf('main pull 3 x 3 at 90% of top set')
		expect(set!.computed.missing).toBe('top-set')
	})
})

describe('reps and effort', () => {
	it('give the load by the inverse of the estimate', () => {
		// Epley: 160 ÷ (1 + 8/30) = 126.315789…; 5 reps at rpe 8 are 7 to failure: 160 ÷ (1 + 7/30) = 129.729730.
		expect(loads('main pull 1 x 5 at 8 rm\nmain pull 1 x 5 rpe 8\nmain pull 1 x 5 rir 2')).toEqual([
			'126.315789 → 127.5',
			'129.72973 → 130',
			'129.72973 → 130',
		])
	})

	it('give a range where reps or effort are one', () => {
		// Low end: 8 reps and 3 left, 160 ÷ (1 + 11/30) = 117.073171; high end: 6 and 2, 160 ÷ (1 + 8/30) = 126.315789.
		expect(loads('main pull 1 x 6-8 rpe 7-8')).toEqual(['117.073171-126.315789 → 117.5-127.5'])
	})

	it('say nothing about a hold', () => {
		expect(loads('accessory body-row 1 x 30 s rpe 8')).toEqual(['? → ?'])
	})

	it('past the end of a formula or a table are unknown, and say so', () => {
		expect(loads('main pull 1 x 14 rpe 9', { more: 'limits own\nestimate with chart' })).toEqual([
			'? → Training load chart gives no load for 15 reps to failure.',
		])
		expect(loads('main pull 1 x 5 at 37 rm', { more: 'limits own\nestimate with brzycki' })).toEqual([
			'? → Brzycki gives no load for 37 reps to failure.',
		])
	})

	it('are unknown without a best', () => {
		expect(loads('main pull 1 x 5 rpe 8', { lifter: '' })).toEqual(['? → Someone has no best of Pull yet.'])
	})
})

describe('a load in kilograms', () => {
	it('is put on the bar as any other, and is a percent of a best that is known', () => {
		const [set] = setsOf('main pull 1 x 5 at 100 kg')
		expect(load(set!)).toBe('100 → 100')
		expect(decimal(set!.computed.percent!.from)).toBe('62.5')
	})

	it('needs no best', () => {
		const [set] = setsOf('main pull 1 x 5 at 100 kg', { lifter: '' })
		expect(load(set!)).toBe('100 → 100')
		expect(set!.computed).toMatchObject({ percent: undefined, percentOfBest: undefined, reference: undefined })
	})

	it('is for each hand where there are two', () => {
		const [set] = setsOf('accessory row 1 x 10 at 23 kg')
		// 22 and 24 are as near: a tie goes down.
		expect(load(set!)).toBe('23 → 22')
		expect(set!.computed.perSide).toBeUndefined()
	})

	it('says so where it is under the empty bar or more than the hall has', () => {
		expect(setsOf('main pull 1 x 5 at 15 kg')[0]!.computed).toMatchObject({ under: true, beyond: false })
		expect(setsOf('accessory row 1 x 5 at 80 kg')[0]!.computed).toMatchObject({ under: false, beyond: true })
	})

	it('has no load in a gym without the equipment', () => {
		const [set] = setsOf('accessory beam 1 x 5 at 60 kg')
		expect(load(set!)).toBe('60 → Hall has no stone beam.')
		expect(set!.computed.missing).toBe('equipment')
	})

	it('goes on a bar of 20 kg with the usual discs where no gym is named', () => {
		expect(loads('main pull 1 x 5 at 101 kg\naccessory beam 1 x 5 at 61 kg', { gym: '' })).toEqual(['101 → 100', '61 → 61'])
	})
})

describe('bodyweight', () => {
	it('counts with what is added to it', () => {
		const lifter = 'bodyweight 68.4 kg'
		expect(
			loads('accessory body-row 1 x 5 at bodyweight, 1 x 5 at bodyweight + 10 kg, 1 x 5 at bodyweight - 10 kg', { lifter }),
		).toEqual(['68.4 → 68.4', '78.4 → 78.4', '58.4 → 58.4'])
	})

	it('that is not known leaves the load unknown', () => {
		const [set] = setsOf('accessory body-row 1 x 5 at bodyweight + 10 kg', { lifter: '' })
		expect(set!.computed).toMatchObject({ missing: 'bodyweight', reason: 'Someone has no bodyweight written down.' })
	})

	it('does not matter where the load is what is added', () => {
		expect(
			loads('accessory hang 1 x 5 at bodyweight, 1 x 5 at bodyweight + 11 kg, 1 x 5 at bodyweight - 15 kg, 1 x 5 at 10 kg', {
				lifter: '',
			}),
		).toEqual(['0 → 0', '11 → 11.25', '-15 → -15', '10 → 10'])
	})

	it('with nothing added needs no implement', () => {
		expect(
			loads('accessory belt-hang 1 x 5 at bodyweight, 1 x 5 at bodyweight - 15 kg, 1 x 5 at bodyweight + 1.5 kg', { lifter: '' }),
		).toEqual(['0 → 0', '-15 → -15', '1.5 → 2'])
	})
})

describe('a percent of bodyweight', () => {
	const heavy = 'bodyweight 80 kg\nbest pull 160 kg on 2026-09-12'

	it('is that share of it, at both ends of a range', () => {
		expect(loads('main pull 1 x 5 at 75% of bodyweight', { lifter: heavy })).toEqual(['60 → 60'])
		expect(loads('main pull 1 x 5 at 75-100% of bodyweight', { lifter: heavy })).toEqual(['60-80 → 60-80'])
	})

	it('is what each hand carries, or what is added', () => {
		expect(loads('accessory row 1 x 5 at 25% of bodyweight', { lifter: heavy })).toEqual(['20 → 20'])
		expect(loads('accessory belt-hang 1 x 5 at 25% of bodyweight', { lifter: heavy })).toEqual(['20 → 20'])
	})

	it('is scaled by the plan', () => {
		// 50 % of 80 = 40, 75 % of that = 30.
		expect(loads('main pull 1 x 5 at 50% of bodyweight', { lifter: heavy, run: 'scale pull 75%' })).toEqual(['30 → 30'])
	})

	it('falls away with a swap: it was meant for another movement', () => {
		const [set] = setsOf('main pull 1 x 5 at 75% of bodyweight', { lifter: heavy, run: 'swap pull for low-pull' })
		expect(set?.computed).toMatchObject({ load: undefined, missing: 'own-load' })
	})
})

describe('reps on top of bodyweight', () => {
	const lifter = 'bodyweight 70 kg\nbest hang 20 kg x 5 on 2026-09-12'

	it('take the body with them: a best of reps is one of both together', () => {
		// (70 + 20) × (1 + 5/30) = 105, of which 35 are added; 80 % of them are 28.
		const [set] = setsOf('accessory hang 1 x 5 at 80%', { lifter })
		expect(decimal(set!.computed.reference!.max)).toBe('35')
		expect(decimal(set!.computed.exact!)).toBe('28')
		expect(set!.computed.steps().map(step => step.text)[1]).toBe(
			'Estimated max, with 70 kg of bodyweight: Epley: 90 kg × (1 + 5/30) = 105 kg, of which 35 kg are added.',
		)
	})

	it('give what is added by an effort, and help where it is less than the body', () => {
		// 105 ÷ (1 + 5/30) = 90, 20 of them added; 105 ÷ (1 + 20/30) = 63, 7 less than the body.
		expect(setsOf('accessory hang 1 x 5 rir 0', { lifter }).map(set => decimal(set.computed.exact!))).toEqual(['20'])
		expect(setsOf('accessory hang 1 x 18 rir 2', { lifter }).map(set => decimal(set.computed.exact!))).toEqual(['-7'])
	})

	it('say nothing where nobody knows the bodyweight', () => {
		const unknown = { lifter: 'best hang 20 kg x 5 on 2026-09-12' }
		const [set] = setsOf('accessory hang 1 x 5 at 80%', unknown)
		expect(set?.computed).toMatchObject({
			load: undefined,
			missing: 'bodyweight',
			reason: 'Reps of Hang take the body with them, and Someone has no bodyweight written down.',
		})
		// A single is what it is.
		const single = { lifter: 'best hang 20 kg on 2026-09-12' }
		expect(setsOf('accessory hang 1 x 5 at 80%', single).map(set => decimal(set.computed.exact!))).toEqual(['16'])
		expect(setsOf('accessory hang 1 x 5 rpe 8', single)[0]?.computed.missing).toBe('bodyweight')
	})
})

describe('a computed warm-up', () => {
	it('is a share of the first working load on the bar', () => {
		// 112.5 on the bar: 45, 67.5 and 90.
		expect(loads('warm-up pull\nmain pull 1 x 5 at 70%')).toEqual(['45 → 45', '67.5 → 67.5', '90 → 90', '112 → 112.5'])
	})

	it('is unknown where the working load is', () => {
		expect(loads('warm-up pull\nmain pull 1 x 5 at 70%', { lifter: '' })[0]).toBe('? → Someone has no best of Pull yet.')
	})
})

describe('a deload week', () => {
	it('has its share of every load, on what the weeks have added too', () => {
		const folder = workspaceOf(
			hall,
			movements,
			'lifter someone\ntrains at hall\nbest pull 160 kg',
			[
				'block test-block',
				'weeks 3',
				'deload week 3 with 50% of sets at 90% of load',
				'session one on monday',
				'main pull 2 x 5 at 70%',
				'each week add 5 kg',
				'accessory pull 2 x 5 at 100 kg',
				'each week add 5 kg',
				'accessory pull 2 x 5 at 10 rm',
				'accessory pull 2 x 5 rir 5',
				'accessory hang 2 x 5 at bodyweight + 20 kg',
			].join('\n'),
			'plan test-plan for someone\nstart 2026-10-05\nrun test-block',
		)
		const [, , deload] = schedulePlan(planIn(folder, 'test-plan'), folder).sessions
		// 0.9 × (112 + 5) = 105.3; 0.9 × (100 + 5) = 94.5; 0.9 × 160 ÷ (1 + 10/30) = 108, twice; 0.9 × 20 = 18.
		expect(deload!.items.flatMap(item => item.sets).map(load)).toEqual([
			'105.3 → 105',
			'94.5 → 95',
			'108 → 107.5',
			'108 → 107.5',
			'18 → 17.5',
		])
	})
})

describe('what a plan changes in loads', () => {
	it('scales the exact loads of a movement and of no other; a share of its top set follows', () => {
		// 95 % of 112 = 106.4, on the bar 107.5 (106.4 lies nearer to it than to 105); 90 % of 107.5 = 96.75.
		const items = 'main pull 1 x 5 at 70%, 1 x 5 at 90% of top set\nmain low-pull 1 x 5 at 70%'
		expect(loads(items, { run: 'scale pull 95%' })).toEqual(['106.4 → 107.5', '96.75 → 97.5', '112 → 112.5'])
	})

	it('lets percents follow the movement that a swap brings in, and drops kilograms with a reason', () => {
		// 75 % of 80 % of 160 = 96.
		const sets = setsOf('main pull 1 x 5 at 75%\naccessory pull 1 x 8 at 60 kg', { run: 'swap pull for half-pull' })
		expect(sets.map(load)).toEqual(['96 → 95', "? → The block's load is meant for Pull; Half pull needs one of its own."])
		expect(sets[1]!.computed.missing).toBe('own-load')
		expect(sets[1]!.load.kind).toBe('none')
	})
})

describe('no load', () => {
	it('is asked for, none is given, and no reason is needed', () => {
		const [set] = setsOf('accessory body-row 1 x 10')
		expect(set!.computed).toMatchObject({ exact: undefined, load: undefined, reason: undefined, missing: undefined })
		expect(set!.computed.steps()).toEqual([])
	})

	it('comes of a text that names things which are not there', () => {
		expect(loads('main nowhere-lift 1 x 5 at 70%\naccessory nowhere-lift 1 x 5 at 41.3 kg')).toEqual([
			'? → Someone has no best of nowhere-lift yet.',
			'41.3 → 41.3',
		])
	})
})
