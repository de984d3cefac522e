import { describe, expect, it } from 'vitest'
import { LoadSheetView, type LoadSheetViewProps } from '../../../client/views/sheet/load-sheet-view.tsx'
import { textOf } from './support/html.ts'
import { item, session, set, sheet } from './support/invented.ts'

const view = (change: Partial<LoadSheetViewProps> & Pick<LoadSheetViewProps, 'sheet'>) =>
	textOf(
		<LoadSheetView
			titles={{ blocks: { rebuild: 'Rebuild' }, gyms: {} }}
			staleBlocks={[]}
			written={null}
			ways={null}
			heading="Mara"
			{...change}
		/>,
	)
const viewOf = (sets: Parameters<typeof item>[0]) => view({ sheet: sheet([session({ items: [item(sets)] })]) })

describe('the load sheet', () => {
	it('shows a set with everything that a lifter needs', () => {
		const one = set({
			percent: { from: '70', to: '70' },
			of: 'best',
			exact: '112',
			load: '112.5',
			perSide: ['25', '20'],
			tempo: '3-1-1-0',
			restSeconds: 180,
		})
		expect(viewOf({ sets: [one, one, one, one] })).toMatch(
			/Deadlift.*4 × 5 112\.5 kg 70%, exact 112 25 \+ 20 a side tempo 3-1-1-0 rest 3 min/,
		)
	})

	it.each([
		['a range of reps', set({ reps: { from: 6, to: 8 } }), '1 × 6–8'],
		['an open end', set({ openEnded: true }), '1 × 5 or more'],
		['a hold', set({ reps: null, seconds: { from: 30, to: 45 } }), '1 × 30–45 s'],
		['a long hold', set({ reps: null, seconds: { from: 50, to: 100 } }), '1 × 50 s–1 min 40 s'],
		['a carry', set({ reps: null, metres: { from: 20, to: 20 }, eachSide: true }), '1 × 20 m each side'],
		['a range of loads', set({ load: '110', loadTo: '115' }), '110–115 kg'],
		[
			'a share of the top set',
			set({ load: '100', exact: '100', percent: { from: '92', to: '92' }, of: 'top-set' }),
			'92% of top set',
		],
		['an effort', set({ rpe: { from: '7', to: '8' } }), 'RPE 7–8'],
		['a ceiling', set({ rir: { from: '2', to: '2' }, effortAtMost: true }), 'RIR at most 2'],
		['an empty bar', set({ load: '20', perSide: [] }), '20 kg no discs'],
	])('says %s', (_, one, words) => expect(viewOf({ sets: [one] })).toContain(words))

	it('says why a load cannot be known, and that it is not known', () => {
		const text = viewOf({
			sets: [set({ percent: { from: '70', to: '70' }, of: 'best', reason: 'No best of Deadlift is known.' })],
		})
		expect(text).toContain('? No best of Deadlift is known.')
		expect(text).not.toContain('kg')
	})

	it('says what is optional, what is carried in each hand, and what comes on top of bodyweight', () => {
		expect(viewOf({ sets: [set(), set(), set({ optional: true })] })).toContain('2–3 × 5')
		expect(viewOf({ hands: 2, sets: [set({ load: '24' })] })).toContain('24 kg each hand')
		expect(viewOf({ loadAdded: true, sets: [set({ load: '10' })] })).toContain('+10 kg')
		expect(viewOf({ loadAdded: true, sets: [set({ load: '-10' })] })).toContain('-10 kg')
	})

	it('shows notes, swaps and what is done back to back', () => {
		const text = viewOf({ notes: ['Hips first.'], insteadOf: 'Strict row', withItemAbove: true })
		for (const words of ['Hips first.', 'instead of Strict row', 'back to back']) expect(text).toContain(words)
	})

	it('names the gym only where it changes', () => {
		const gyms = { blocks: {}, gyms: { 'pier-house': 'Pier House' } }
		const one = session({ gym: 'north-hall' })
		const other = session({ date: '2026-10-07', gym: 'pier-house' })
		expect(view({ titles: gyms, sheet: sheet([one, other]) })).toContain('Pier House')
		expect(view({ titles: gyms, sheet: sheet([one]) })).not.toContain('North hall')
	})

	it('marks the weeks of a block whose text is broken', () => {
		const two = sheet([session(), session({ date: '2026-10-12', planWeek: 2, block: 'peak' })])
		expect(view({ sheet: two, staleBlocks: ['peak'] })).toMatch(/Week 1(?! as it was).*Week 2 as it was/)
		expect(view({ sheet: two, staleBlocks: null })).toMatch(/Week 1 as it was.*Week 2 as it was/)
	})

	it('is not blank where nothing has a date', () => expect(view({ sheet: sheet([]) })).toContain('No session'))
})
