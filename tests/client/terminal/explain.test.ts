import path from 'node:path'
import stringWidth from 'string-width'
import { describe, expect, test } from 'vitest'
import { pageText } from '../../../client/terminal/text/page.ts'
import { styleFor } from '../../../client/terminal/text/style.ts'
import { rules } from '../../../language/rules/registry.ts'
import { barstave } from './support/program.ts'
import { workspaceOf } from './support/workspace.ts'

const languagePage = path.join(import.meta.dirname, 'language-page')

describe('explain', () => {
	test('prints the page of a rule', async () => {
		const rule = rules.find(one => one.code === 'frequency-cap')!
		const { out, status } = await barstave(['explain', rule.code], { cwd: languagePage })
		expect(status).toBe(0)
		expect(out).toContain(`${rule.code} · ${rule.level} · since ${rule.since} · source: ${rule.source.replaceAll('`', '"')}\n`)
		expect(out).toContain(pageText(rule.page, styleFor(false), 120))
	})

	test.each(rules.map(rule => rule.code))('the page of %s reads on a terminal', code => {
		const { page } = rules.find(one => one.code === code)!
		const text = pageText(page, styleFor(false), 80)
		for (const heading of page.matchAll(/^#+ (.+)$/gm)) expect(text.split('\n')).toContain(heading[1])
		expect(text.split('← reported')).toHaveLength(page.split('// expect:').length)
		// The marks of a page are for whoever tests it.
		expect(text).not.toMatch(/```|`|\/\/ expect:|^#/m)
		for (const line of text.split('\n')) if (!line.startsWith('    ')) expect(stringWidth(line)).toBeLessThanOrEqual(80)
	})

	test('tells the level that the workspace has set', async () => {
		const cwd = await workspaceOf({ 'rules.stave': 'rules house\n  frequency-cap error\n' })
		const { out } = await barstave(['explain', 'frequency-cap'], { cwd })
		expect(out).toContain('frequency-cap · error (in this workspace; else warning)')
	})

	test.each([
		['plank', 'Plank (movement)', 'Hold'],
		['back-rounding', 'Back rounds before the hips finish (breakdown)', 'stability 2 sessions'],
		['front-trunk', 'Trunk, front (progression)', 'Step 2'],
		['mara-lind', 'Mara Lind (lifter)', 'Bests'],
	])('says what is known of %s', async (name, heading, fact) => {
		const { out, status } = await barstave(['explain', name], { cwd: languagePage })
		expect(status).toBe(0)
		expect(out.split('\n')[0]).toBe(heading)
		expect(out).toContain(fact)
	})

	test.each([
		['deload', 'deload', 'deload week 5 with 60% of sets at 90% of load'],
		['main', 'Items', 'work counts in all totals'],
		['RPE', 'rpe, rir: the effort', 'two reps left'],
		['broke with', 'broke with: position was lost', 'never for a best'],
		['passed', 'passed: what was shown', '  deadlift at 1.5 x bodyweight          a load in bodyweights'],
	])('says what the word %s means', async (word, heading, part) => {
		const { out, status } = await barstave(['explain', word], { cwd: languagePage })
		expect(status).toBe(0)
		expect(out.split('\n')[0]).toBe(heading)
		expect(out).toContain(part)
		expect(out).not.toMatch(/<!--|\]\(|`|The examples below/)
	})

	test.each([
		[
			'breakdowns',
			'Built in',
			'back-rounding            Back rounds before the hips finish                     weak link stability',
		],
		['lifter', 'In this workspace', 'mara-lind   Mara Lind'],
		['movements', 'Built in', 'Front squat'],
	])('lists all %s', async (kind, heading, row) => {
		const { out, status } = await barstave(['explain', kind], { cwd: languagePage })
		expect(status).toBe(0)
		expect(out.split('\n')).toContain(heading)
		expect(out).toContain(row)
	})

	test('says where it stands, and what it replaces', async () => {
		const cwd = await workspaceOf({ 'own/moves.stave': '// ours\nmovement plank "Our plank"\n  source "the club"\n' })
		const { out } = await barstave(['explain', 'plank'], { cwd })
		expect(out).toContain('Our plank (movement)\nown/moves.stave:2, in place of the built-in one\n')
		expect(out).toContain('Source: the club')
		expect((await barstave(['explain', 'side-plank'], { cwd })).out).toContain('\nbuilt in\n')
	})

	test('shows a caution first', async () => {
		const { out } = await barstave(['explain', 'low-back-pressure'], { cwd: languagePage })
		expect(out.split('\n\n')[1]).toMatch(/^Caution: .*licensed clinician/s)
	})

	test('lists all rules without a name, needs no texts for it', async () => {
		const { out, status } = await barstave(['explain'], { cwd: await workspaceOf({}) })
		expect(status).toBe(0)
		for (const { code, summary } of rules) {
			expect(out).toContain(`  ${code} `)
			expect(out).toContain(summary)
		}
	})

	test('names the nearest where nothing has the name', async () => {
		const ended = await barstave(['explain', 'frequency-cop'], { cwd: languagePage })
		expect(ended).toMatchObject({
			status: 2,
			out: '',
			said: 'Nothing is called "frequency-cop". Did you mean "frequency-cap"?\n',
		})
	})
})

describe('why', () => {
	test('tells each step from the best to the discs', async () => {
		const { out, status } = await barstave(['why', 'mara-autumn', '2026-10-05', 'deadlift'], { cwd: languagePage })
		expect(status).toBe(0)
		for (const step of ['Sets 1-4', '160 kg on 2026-09-12', '70% of 160 kg = 112 kg', '112.5 kg', '25 + 20'])
			expect(out).toContain(step)
		expect(out).toContain('no medical advice')
	})

	test('names the source of a formula', async () => {
		const { out } = await barstave(['why', 'mara-autumn', '2026-10-07', 'back-squat'], { cwd: languagePage })
		expect(out).toMatch(/epley/i)
	})

	test.each([
		[['mara-autumn', '2026-10-05', 'back-squat'], 'That day has: deadlift'],
		[['mara-autumn', '2026-10-06', 'deadlift'], '2026-10-05, 2026-10-12'],
		[['mara-autumn', '2026-10-06', 'sled-push'], 'no "sled-push" on any day'],
		[['mara-autumn', '5.10.2026', 'deadlift'], 'A date is written like'],
		[['mara-spring', '2026-10-05', 'deadlift'], 'mara-autumn'],
		[['mara-autumn', '2026-10-05'], 'movement'],
	])('says what there is instead of %j', async (words, said) => {
		const ended = await barstave(['why', ...words], { cwd: languagePage })
		expect(ended).toMatchObject({ status: 2, out: '', said: expect.stringContaining(said) })
	})

	test('says why there is no load', async () => {
		const { out, status } = await barstave(['why', 'mara-autumn', '2026-10-05', 'chest-supported-row'], { cwd: languagePage })
		expect(status).toBe(0)
		expect(out).toContain('in place of')
	})
})
