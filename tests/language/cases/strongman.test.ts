import { describe, expect, test } from 'vitest'
import { sessionSeconds } from '../../../language/compute/duration.ts'
import { decimal } from '../../../language/compute/exact.ts'
import { schedulePlan } from '../../../language/compute/schedule.ts'
import { planVolume } from '../../../language/compute/volume.ts'
import { explainItem } from '../../../language/reports/explanation.ts'
import { loadSheet } from '../../../language/reports/load-sheet.ts'
import { fileProblems } from '../../../language/workspace/file-problems.ts'
import { planIn, workspaceOf } from '../../support/workspace.ts'

const yard = `
movement stone-over-bar "Stone over bar"
  pattern hinge
  trains drive
  muscles glutes 1
  equipment stone

movement farmers-walk "Farmers walk"
  pattern carry
  trains stability
  muscles forearms 1
  equipment farmers-handle
  load hands 2

movement yoke-walk "Yoke walk"
  pattern carry
  trains stability
  equipment yoke

gym yard "Yard"
  bar farmers-handle 10 kg
  bar yoke 60 kg
  plates 20 kg x 4, 10 kg x 4, 5 kg x 4
  fixed stone 90 kg, 105 kg, 120 kg`

/** A day of events for a lifter of 98 kg. */
function eventDay(items: string, lifter = '  bodyweight 98 kg', gym = yard) {
	const folder = workspaceOf(
		gym,
		`lifter olve-brek "Olve Brek"\n  trains at yard\n${lifter}`,
		`block events "Events"\n  weeks 1\n  session event-day on saturday\n${items}`,
		'plan olve-autumn for olve-brek\n  start 2026-10-05\n  run events',
	)
	const plan = planIn(folder, 'olve-autumn')
	const session = schedulePlan(plan, folder).sessions[0]!
	return { folder, session, sheet: loadSheet(schedulePlan(plan, folder), folder), totals: planVolume(plan, folder).totals }
}

type Day = ReturnType<typeof eventDay>

const loadsOf = ({ session }: Day) =>
	session.items.map(({ sets: [set] }) => {
		const { exact, load, perSide } = set!.computed
		return [exact, load].map(amount => amount && decimal(amount)).concat(perSide?.map(disc => decimal(disc)).join(' + '))
	})

describe('strongman', () => {
	test('stones are the only loads of a stone, handles and yoke carry a part of the bodyweight', () => {
		const day = eventDay(`
    main stone-over-bar 2 x 60 s for reps at 100 kg rest 3 min
    main farmers-walk 3 x 20 m for time at 50% of bodyweight rest 2 min
    accessory yoke-walk 2 x 15 m at 150% of bodyweight`)
		expect(loadsOf(day)).toEqual([
			// Of 90, 105 and 120 kg the nearest to 100 is 105.
			['100', '105', undefined],
			// 50 % of 98 = 49 in each hand. Four sides share four discs of each kind, one each: 10 + 2 × 20 = 50 is nearest.
			['49', '50', '20'],
			// 150 % of 98 = 147. Two sides have two of each: 60 + 2 × (20 + 20 + 5) = 150, where 60 + 2 × (20 + 20) = 140.
			['147', '150', '20 + 20 + 5'],
		])
	})

	test('two hands need discs for both', () => {
		// Two discs of 20 kg are none for four sides: 10 + 2 × (10 + 5) = 40 is the most, 9 kg short of 49.
		const day = eventDay('main farmers-walk 3 x 20 m at 50% of bodyweight', undefined, yard.replace('20 kg x 4', '20 kg x 2'))
		expect(loadsOf(day)).toEqual([['49', '40', '10 + 5']])
		const codes = fileProblems(day.folder, day.folder.fileUris()[0]!).map(({ code }) => code)
		expect(codes).toContain('beyond-supply')
	})

	test('a part of a bodyweight that nobody has written down is unknown, and so are its totals', () => {
		const { session, totals } = eventDay('main yoke-walk 2 x 5 at 150% of bodyweight', '')
		expect(session.items[0]!.sets[0]!.computed).toMatchObject({
			load: undefined,
			missing: 'bodyweight',
			reason: 'Olve Brek has no bodyweight written down.',
		})
		expect(totals.lifts.get('yoke-walk')).toMatchObject({ excludedSets: 2, unknown: { load: 2, percent: 2 } })
	})

	test('a part of the bodyweight is no percent of a best', () => {
		const { session, totals } = eventDay('main yoke-walk 2 x 5 at 150% of bodyweight')
		expect(session.items[0]!.sets[0]!.computed.percent).toBeUndefined()
		expect(totals.lifts.get('yoke-walk')).toMatchObject({ weighted: { reps: 0 }, top: undefined, unknown: { percent: 2 } })
		// 2 × 5 × 150 kg = 1500 kg are known all the same.
		expect(decimal(totals.lifts.get('yoke-walk')!.tonnage.from)).toBe('1500')
	})

	test('as many reps as a time holds are not known before, the time is', () => {
		const { session, totals } = eventDay(`
    main stone-over-bar 2 x 60 s for reps at 105 kg rest 3 min
    main farmers-walk 3 x 20 m for time at 50% of bodyweight rest 2 min`)
		// Stones 60 + 180 + 60 + 180 = 480; walks at a metre a second 20 + 120 + 20 + 120 + 20 = 300.
		expect(decimal(sessionSeconds(session.items).from)).toBe('780')
		const [stone, walk] = ['stone-over-bar', 'farmers-walk'].map(name => totals.lifts.get(name)!)
		expect([stone?.sets.from, stone?.reps.to, decimal(stone!.tonnage.to), stone?.excludedSets]).toEqual([2, 0, '0', 2])
		// 3 × 20 = 60 m.
		expect([walk?.sets.from, decimal(walk!.carry.from), walk?.excludedSets]).toEqual([3, '60', 3])
		// Two sets of the glutes all the same.
		expect(decimal(totals.muscles.get('glutes')!.from)).toBe('2')
	})

	test('the sheet says what is asked for', () => {
		const { sheet, session, folder } = eventDay(`
    main stone-over-bar 2 x 60 s for reps at 105 kg rest 3 min
    main farmers-walk 3 x 20 m for time at 50% of bodyweight rest 2 min`)
		const [stone, walk] = sheet.sessions[0]!.items.map(item => item.sets[0]!)
		expect(stone).toMatchObject({ reps: null, seconds: { from: 60, to: 60 }, forReps: true, load: '105' })
		expect(walk).toMatchObject({
			metres: { from: 20, to: 20 },
			forTime: true,
			percent: { from: '50', to: '50' },
			of: 'bodyweight',
		})
		expect(session.items.flatMap(item => explainItem(item, folder).map(({ heading, lines }) => [heading, lines[0]]))).toEqual([
			['Sets 1-2: 1 min for reps at 105 kg rest 3 min', 'Written load: 105 kg.'],
			['Sets 1-3: 20 m for time at 50% of bodyweight rest 2 min', '50% of bodyweight, 98 kg = 49 kg.'],
		])
	})
})
