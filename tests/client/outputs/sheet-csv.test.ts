import { parse } from 'csv-parse/sync'
import { describe, expect, it } from 'vitest'
import { sheetCsv } from '../../../client/outputs/sheet-csv.ts'
import type { LoadSheet, SheetItem, SheetSession, SheetSet } from '../../../language/reports/load-sheet.ts'
import { clubPictures } from '../views/support/club.ts'
import { item, picture, session, set, sheet } from '../views/support/invented.ts'
import { awkward, dressedIn, withoutSessions } from './support/awkward.ts'

type Row = Readonly<Record<string, string>>

/** Reads by RFC 4180, strictly: every line has as many cells as the first. */
const rowsOf = (csv: string): Row[] => parse(csv, { bom: true, columns: true, record_delimiter: '\r\n' })

describe('the sheet as a table', () => {
	it.each([...clubPictures()])('%s: one row a set, with the figures of the sheet', (_, one) => {
		const rows = rowsOf(sheetCsv(one))
		const sets = setsOf(one.sheet!)
		expect(rows.length).toBe(sets.length)
		for (const [index, { session, item, set }] of sets.entries()) {
			const row = rows[index]!
			expect(row).toMatchObject({ Date: session.date, Movement: item.title, Role: item.role, Unit: set?.unit ?? '' })
			expect(row.Load).toBe(set?.load ?? '')
			expect(row['Load to']).toBe(set?.loadTo ?? '')
			expect(row['Load before rounding']).toBe(set?.exact ?? '')
			expect(row.Reps).toBe(String(set?.reps?.from ?? ''))
			expect(row.Percent).toBe(set?.percent?.from ?? '')
			expect(row['Discs a side']).toBe(set?.perSide?.join(' + ') ?? '')
			expect(row['Rest in seconds']).toBe(String(set?.restSeconds ?? ''))
		}
	})

	it.each(Object.entries(awkward))('carries %s', (_, text) => {
		const [row] = rowsOf(sheetCsv(dressedIn(text)))
		for (const title of ['Session', 'Movement', 'Block', 'Gym', 'In place of', 'Notes on the movement', 'Notes on the session'])
			expect(row![title]).toBe(text)
	})

	it('ends every line with CR LF, the last one too, and says to spreadsheets that it is UTF-8', () => {
		const csv = sheetCsv(picture())
		expect(csv.startsWith('\ufeffDate,')).toBe(true)
		expect(csv.endsWith('\r\n')).toBe(true)
		expect(csv.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/)
	})

	it.each(['=1+1', '+SUM(A1)', '-2', '@cmd', '\t=1', '＝1+1', '=HYPERLINK("https://example.org")'])(
		'makes %j no formula, wherever a person may write it',
		text => {
			const [row] = rowsOf(sheetCsv(dressedIn(text)))
			for (const title of ['Session', 'Movement', 'Block', 'Gym', 'In place of', 'Notes on the movement'])
				expect(row![title]).toBe(`'${text}`)
		},
	)

	it('leaves figures below zero what they are', () => {
		const assisted = item({ loadAdded: true, sets: [set({ load: '-10', exact: '-10' })] })
		const [row] = rowsOf(sheetCsv(picture({ sheet: sheet([session({ items: [assisted] })]) })))
		expect(row).toMatchObject({ Load: '-10', 'Load before rounding': '-10' })
	})

	it('has a row for a warm-up without sets, and high ends only where there is a range', () => {
		const items = [
			item({ title: 'Row', role: 'warm-up', sets: [] }),
			item({ sets: [set({ reps: { from: 8, to: 12 }, load: '40', loadTo: '45', optional: true })] }),
		]
		const rows = rowsOf(sheetCsv(picture({ sheet: sheet([session({ items })]) })))
		expect(rows[0]).toMatchObject({ Movement: 'Row', Set: '', Load: '', Optional: '' })
		expect(rows[1]).toMatchObject({
			Set: '1',
			Optional: 'yes',
			Reps: '8',
			'Reps to': '12',
			Load: '40',
			'Load to': '45',
			Work: '8–12',
		})
	})

	it('of a plan without a session is its titles', () => {
		expect(rowsOf(sheetCsv(withoutSessions()))).toEqual([])
		expect(sheetCsv(withoutSessions()).split('\r\n')).toHaveLength(2)
	})
})

interface SetOnSheet {
	readonly session: SheetSession
	readonly item: SheetItem
	readonly set: SheetSet | null
}

function setsOf({ sessions }: LoadSheet): SetOnSheet[] {
	return sessions.flatMap(session =>
		session.items.flatMap(item => {
			const sets: readonly (SheetSet | null)[] = item.sets.length === 0 ? [null] : item.sets
			return sets.map(set => ({ session, item, set }))
		}),
	)
}
