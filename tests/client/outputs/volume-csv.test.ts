import { parse } from 'csv-parse/sync'
import { describe, expect, it } from 'vitest'
import { volumeCsv } from '../../../client/outputs/volume-csv.ts'
import { clubPictures } from '../views/support/club.ts'
import { volume, week } from '../views/support/invented.ts'

const rowsOf = (csv: string): Record<string, string>[] => parse(csv, { bom: true, columns: true, record_delimiter: '\r\n' })

describe('the weekly volume as a table', () => {
	it.each([...clubPictures()])('%s: the figures of the volume', (_, { volume, titles }) => {
		const rows = rowsOf(volumeCsv(volume!, titles))
		const figure = (week: number, of: string, name: string, figure: string) =>
			rows.find(row => row.Week === String(week) && row.Of === of && row.Name === name && row.Figure === figure)
		for (const { week, from, lifts, muscles, musclesTo, links, sessions } of volume!.weeks) {
			expect(figure(week, 'week', '', 'Sessions')).toMatchObject({ From: String(sessions), Monday: from })
			for (const [name, lift] of Object.entries(lifts)) {
				expect(figure(week, 'movement', name, 'Tonnage')).toMatchObject({
					Title: lift.title,
					Unit: volume!.unit,
					From: lift.tonnage!.low,
					To: lift.tonnage!.high,
				})
				expect(figure(week, 'movement', name, 'Average intensity')?.From).toBe(lift.averagePercent ?? undefined)
				expect(figure(week, 'movement', name, 'Sets')?.To).toBe(String(lift.setsTo ?? lift.sets))
			}
			for (const [name, sets] of Object.entries(muscles))
				expect(figure(week, 'muscle', name, 'Hard sets')).toMatchObject({ From: sets, To: musclesTo[name] ?? sets })
			for (const [name, link] of Object.entries(links))
				expect(figure(week, 'link', name, 'Under tension')?.From).toBe(String(link.seconds))
		}
	})

	it('has a row for each figure and nothing for what cannot be known', () => {
		const rows = rowsOf(volumeCsv(volume([week({ excludedSets: 3 })]), { blocks: { rebuild: '=Rebuild, "new"' }, gyms: {} }))
		expect(rows.map(row => [row.Of, row.Name, row.Figure, row.Unit, row.From])).toEqual([
			['week', '', 'Sessions', '', '1'],
			['week', '', 'Length', 'min', '41'],
			['week', '', 'Sets not counted', '', '3'],
			['link', 'stability', 'Hard sets', '', '0'],
			['link', 'stability', 'Under tension', 's', '0'],
			['link', 'drive', 'Hard sets', '', '0'],
			['link', 'drive', 'Under tension', 's', '0'],
		])
		expect(rows[0]!.Block).toBe('\'=Rebuild, "new"')
	})
})
