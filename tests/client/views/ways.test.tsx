import { renderToString } from 'preact-render-to-string'
import { expect, test } from 'vitest'
import { PictureView } from '../../../client/views/picture-view.tsx'
import { waysOfSessions } from '../../../client/views/ways.ts'
import type { Ways } from '../../../language/reports/preview.ts'
import { item, picture, session, set, sheet } from './support/invented.ts'

test('each load says how it came about, and nothing that people wrote becomes markup', () => {
	const monday = session({ items: [item({ sets: [set({ exact: '112', load: '112.5' })] })] })
	const lines = ['Best of Deadlift: <b>160 kg</b>.', '70% of 160 kg = 112 kg.']
	const { id, block } = monday
	const ofSessions = [{ id, block, items: [[0]] }]
	const page = (ways: Ways | null) =>
		renderToString(<PictureView picture={picture({ sheet: sheet([monday]), ways })} staleBlocks={[]} go={null} />)
	const shown = page({ texts: [lines], ofSessions })
	expect(shown).toMatch(/<summary>how<span[^>]*> the load of Deadlift came about</)
	expect(shown).toContain('<li><span lang="en" dir="ltr">70% of 160 kg = 112 kg.</span></li>')
	expect(shown).toContain('&lt;b>160 kg')
	expect(page(null)).not.toContain('class="way"')
})

test('a session that is done twice on one date has its own ways both times', () => {
	const done = (id: string, load: string) => session({ id, items: [item({ sets: [set({ exact: load, load })] })] })
	const sessions = [done('twice', '100'), done('twice.2', '90')]
	const ways: Ways = {
		texts: [['The first time.'], ['The second time.']],
		ofSessions: sessions.map(({ id, block }, index) => ({ id, block, items: [[index]] })),
	}
	expect(waysOfSessions(sheet(sessions), ways)).toEqual(ways.texts.map(lines => [[lines]]))
})
