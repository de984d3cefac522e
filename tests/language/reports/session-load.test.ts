import { describe as about, expect, it } from 'vitest'
import { decimal } from '../../../language/compute/exact.ts'
import { describe } from '../../../language/reports/description.ts'
import { loggedLoad } from '../../../language/reports/session-load.ts'
import { workspaceOf } from '../../support/workspace.ts'

/** The loads of the first week are those of a published one; see foster-block1 in the reference values. */
const published = [600, 750, 200, 750, 800]
const entry = (day: number, load: number) => `on 2026-10-${String(day).padStart(2, '0')}\nfelt 5 for ${load / 5} min`
const week = published.map((load, index) => entry(5 + index, load))

function folderOf(entries: readonly string[], limits = '') {
	return workspaceOf('lifter someone "Some One"', `log someone\n${entries.join('\n')}`, limits)
}

function weeksOf(entries: readonly string[], limits = '') {
	return loggedLoad('someone', folderOf(entries, limits)).weeks.map(({ monday, sessions, unrated, load, isOver, spread }) => ({
		monday,
		sessions: `${sessions - unrated}/${sessions}`,
		load: load.valueOf(),
		isOver,
		monotony: spread?.monotony && decimal(spread.monotony, 3),
		strain: spread?.strain && decimal(spread.strain, 1),
	}))
}

function factsOf(entries: readonly string[]) {
	const folder = folderOf(entries)
	return describe(folder.logsOf('someone')[0]!, folder)
		.facts.slice(2)
		.map(({ label, text }) => `${label}: ${text}`)
}

about('the load that a log shows', () => {
	it('is summed by calendar weeks, with monotony and strain where the week is over', () => {
		expect(weeksOf([...week, entry(12, 400), entry(13, 100)])).toEqual([
			{ monday: '2026-10-05', sessions: '5/5', load: 3100, isOver: true, monotony: '1.316', strain: '4081.1' },
			{ monday: '2026-10-12', sessions: '2/2', load: 500, isOver: false, monotony: undefined, strain: undefined },
		])
	})

	it('takes the deviation of the limits', () => {
		const [first] = weeksOf([...week, entry(12, 400)], 'limits house\ndeviation sample')
		expect(first).toMatchObject({ monotony: '1.219', strain: '3778.3' })
	})

	it('knows that a week is over on its sunday', () => {
		expect(weeksOf([...week, entry(11, 100)])).toMatchObject([{ isOver: true }])
		expect(weeksOf([...week, entry(10, 100)])).toMatchObject([{ isOver: false }])
	})

	it('has weeks without a session between', () => {
		expect(weeksOf([entry(5, 300), entry(19, 300)]).map(one => [one.sessions, one.load, one.monotony])).toEqual([
			['1/1', 300, '0.408'],
			['0/0', 0, undefined],
			['1/1', 300, undefined],
		])
	})

	it('leaves a session without a rating out, and says no monotony of its week', () => {
		const entries = [...week, 'on 2026-10-10\ndid back-squat 3 x 5 at 100 kg', entry(12, 400)]
		expect(weeksOf(entries)[0]).toEqual({
			monday: '2026-10-05',
			sessions: '5/6',
			load: 3100,
			isOver: true,
			monotony: undefined,
			strain: undefined,
		})
	})

	it('takes a missed session as a day of rest, and a note as none', () => {
		const entries = [...week, 'on 2026-10-10 missed pulls because "work"', 'on 2026-10-11\nnote "Slept well."']
		expect(weeksOf(entries)).toMatchObject([{ sessions: '5/5', load: 3100, isOver: true, monotony: '1.316' }])
	})

	it('takes all logs of a lifter together', () => {
		const folder = workspaceOf('lifter someone', `log someone\n${week[0]}`, `log someone\n${week[1]}`)
		expect(loggedLoad('someone', folder).weeks.map(one => one.load.valueOf())).toEqual([1350])
	})

	it('is averaged over days where the log has as many', () => {
		// λ = 1/4, begun with 400: the published series has 195.117188 after seven days.
		const series = [400, 0, 500, 0, 600, 0, 0]
		const entries = series.flatMap((load, index) => (load === 0 ? [] : [entry(5 + index, load)]))
		const averages = (more: readonly string[]) =>
			loggedLoad('someone', folderOf([...entries, ...more])).averages.map(({ spanDays, average }) => [spanDays, decimal(average)])
		expect(averages([])).toEqual([])
		expect(averages(['on 2026-10-11 missed pulls because "work"'])).toEqual([[7, '195.117188']])
		expect(averages(['on 2026-11-01 missed pulls because "work"']).map(([span]) => span)).toEqual([7, 28])
		expect(averages(['on 2026-10-11\ndid back-squat 3 x 5 at 100 kg'])).toEqual([])
	})

	it('looks back ten years at most', () => {
		const old = 'on 1900-01-01\nfelt 5 for 60 min'
		expect(weeksOf([old, ...week, entry(11, 0)])).toEqual(weeksOf([...week, entry(11, 0)]))
		const [first, ...others] = weeksOf([old, 'on 2017-01-02\nfelt 5 for 60 min', ...week])
		expect([first?.monday, first?.load, others.length]).toEqual(['2017-01-02', 300, 509])
	})

	it('is nothing without entries', () => {
		expect(loggedLoad('someone', workspaceOf('log someone'))).toEqual({ weeks: [], averages: [] })
	})
})

about('what is told of a log', () => {
	it('has its latest weeks and averages', () => {
		expect(factsOf([...week, 'on 2026-10-11 missed pulls because "work"', entry(12, 400)])).toEqual([
			'Week of 2026-10-05: load 3100 in 5 sessions, monotony 1.32 (population deviation), strain 4081',
			'Week of 2026-10-12: load 400 in 1 session, so far',
			'Load a day, weighted: 369 over 7 days',
		])
	})

	it('says what is not rated', () => {
		expect(factsOf(['on 2026-10-05\ndid back-squat 3 x 5 at 100 kg', entry(7, 300), entry(12, 400)])[0]).toBe(
			'Week of 2026-10-05: load 300 in 1 session, 1 more not rated',
		)
		expect(factsOf(['on 2026-10-05\ndid back-squat 3 x 5 at 100 kg'])).toEqual([
			'Week of 2026-10-05: no load, 1 more not rated, so far',
		])
	})
})
