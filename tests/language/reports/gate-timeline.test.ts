import { describe, expect, it } from 'vitest'
import type { Span } from '../../../language/model/text.ts'
import { gateTimeline } from '../../../language/reports/gate-timeline.ts'
import { planIn, workspaceOf } from '../../support/workspace.ts'

const folder = workspaceOf(`
movement plank "Plank"
movement weighted-hold "Weighted hold"
  requires plank held 45 s
  source "the coach's ladder"
movement wheel "Wheel"
  requires weighted-hold held 30 s with 5 kg
movement front-squat "Front squat"
  requires sign-off
movement deadlift "Deadlift"

lifter mara-lind "Mara Lind"
  passed plank held 50 s on 2026-09-20
  best deadlift 160 kg on 2026-09-12

block first "First"
  weeks 2
  requires deadlift at 140 kg
  session a on monday
    accessory weighted-hold
      week 1: 3 x 30 s at 5 kg
  session b on wednesday
    accessory wheel
      week 2: 3 x 8
    accessory front-squat
      week 2: 3 x 5 at 40 kg

plan autumn for mara-lind
  start 2026-10-05
  run first
`)

describe('the gate timeline', () => {
	const gates = gateTimeline(planIn(folder, 'autumn'), folder)
	const short = gates.map(({ text, before, neededOn, state, passedOn, shownBy, plannedOn }) => [
		text,
		before,
		neededOn,
		state,
		passedOn ?? plannedOn,
		shownBy,
	])

	it('says what was passed when, what the plan reaches itself, and what is open, by the day that needs it', () => {
		expect(short).toEqual([
			// The block requires it on its first day; the best of 160 kg shows it.
			['Deadlift at 140 kg', [], '2026-10-05', 'passed', '2026-09-12', 'best'],
			// First used on the monday of week 1; 50 s on 20 September are more than 45 s.
			['Plank held 45 s', ['Weighted hold'], '2026-10-05', 'passed', '2026-09-20', 'passed'],
			// Needed on the wednesday of week 2; the monday of week 1 has 30 s with 5 kg.
			['Weighted hold held 30 s with 5 kg', ['Wheel'], '2026-10-14', 'planned', '2026-10-05', null],
			// No set shows a sign-off.
			['a sign-off of Front squat', ['Front squat'], '2026-10-14', 'open', null, null],
		])
	})

	it('names the source of a gate, and none for the coach’s own text', () => {
		expect(gates.map(({ source }) => source)).toEqual([null, "the coach's ladder", null, null])
	})

	it('leads to what shows a gate, else to where it is set', () => {
		const asked: [string, string][] = []
		gateTimeline(planIn(folder, 'autumn'), folder, (definition, { start }: Span) => {
			asked.push([definition.kind, definition.name.text])
			return { uri: 'file:///a', range: { start: { line: start, character: 0 }, end: { line: start, character: 1 } } }
		})
		expect(asked).toEqual([
			['lifter', 'mara-lind'],
			['lifter', 'mara-lind'],
			['movement', 'wheel'],
			['movement', 'front-squat'],
		])
	})

	it('says how near the lifter came', () => {
		const near = workspaceOf(`
movement plank "Plank"
movement weighted-hold "Weighted hold"
  requires plank held 45 s
lifter tom-aas
block one
  weeks 1
  session a on monday
    accessory weighted-hold 1 x 20 s
plan autumn for tom-aas
  start 2026-10-05
  run one
log tom-aas
  on 2026-09-28
    did plank 40 s, 35 s
`)
		const [gate] = gateTimeline(planIn(near, 'autumn'), near)
		expect([gate!.state, gate!.nearest]).toEqual(['open', { text: '40 s', on: '2026-09-28' }])
	})
})
