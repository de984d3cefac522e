import type { Picture } from '../../../../language/reports/preview.ts'
import { item, picture, session, set, sheet } from '../../views/support/invented.ts'

/** Texts that formats have to carry as they are. */
export const awkward = {
	'commas, semicolons and colons': 'Pull, hold; then: push',
	quotes: 'The "long" pull of \'it\'',
	backslashes: 'Left \\ right \\n not a break',
	'line breaks': 'First line\nsecond line',
	emoji: 'Heavy 🏋️‍♀️ pull 👍🏽',
	Arabic: 'مارا ليند',
	Hebrew: 'תוכנית סתיו',
	Greek: 'Βαριά έλξη',
	Cyrillic: 'Тяжёлая тяга',
	Chinese: '深蹲',
	'letters with marks': 'Łódź Đặng ő ñ å',
	'a very long note': 'Breathe out, brace, and keep the bar close. '.repeat(400).trim(),
} as const

/** A plan in which a text stands wherever a person may write one. */
export function dressedIn(text: string): Picture {
	const dressed = session({
		title: text,
		gym: 'north-hall',
		notes: [text],
		items: [
			item({ title: text, insteadOf: text, notes: [text], sets: [set({ load: '112.5', exact: '112', perSide: ['25', '20'] })] }),
		],
	})
	return picture({
		title: text,
		lifterTitle: text,
		sheet: sheet([dressed]),
		titles: { blocks: { rebuild: text }, gyms: { 'north-hall': text } },
	})
}

/** Whatever is asked for in pictures, without the part that they were made for. */
export function withoutSessions(): Picture {
	return picture({ sheet: sheet([]) })
}
