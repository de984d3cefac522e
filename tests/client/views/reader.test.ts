import { describe, expect, it } from 'vitest'
import { readerOf } from '../../../client/views/reader/reader.ts'

const plain = readerOf(null)
const german = readerOf('de-DE')

describe('a reader', () => {
	it('without a locale writes as the language does', () => {
		expect(plain.number('112.5')).toBe('112.5')
		expect(plain.day('2026-10-05')).toBe('2026-10-05')
		expect(plain.days('2026-10-05', '2026-10-11')).toBe('2026-10-05 to 2026-10-11')
		expect(plain.weekday('2026-10-05')).toBe('Mon')
	})

	it('with a locale writes numbers and dates as its readers do', () => {
		expect(german.mass('112.5', 'kg')).toBe('112,5\u00a0kg')
		expect(german.day('2026-10-05')).toMatch(/^5\. Okt/)
		expect(german.weekday('2026-10-05')).toBe('Mo')
	})

	it('writes digits that stay in their place in a line from left to right', () => {
		const arabic = readerOf('ar-EG')
		expect(arabic.number('12')).toBe('12')
		expect(arabic.day('2026-10-05')).toMatch(/^5 /)
		expect(arabic.days('2026-10-05', '2026-10-11')).toMatch(/2026/)
	})

	it('writes a percent where its readers have the sign', () => {
		expect(plain.percent('72.5')).toBe('72.5%')
		expect(readerOf('en-GB').percent('70', '75')).toBe('70–75%')
		expect(german.percent('72.5')).toBe('72,5\u00a0%')
		expect(readerOf('tr').percent('70')).toBe('%70')
	})

	it('keeps every digit of a decimal string', () => {
		expect(german.number('48.9375')).toBe('48,9375')
		expect(german.number('9007199254740993.5')).toContain('993,5')
	})

	it.each(['xx-nowhere-at-all', 'not a locale', ''])('reads %j, which is no locale, as none', locale =>
		expect(readerOf(locale).number('2.5')).toBe('2.5'),
	)

	it.each([
		[30, '30 s'],
		[60, '1 min'],
		[90, '90 s'],
		[100, '1 min 40 s'],
		[180, '3 min'],
		[0, '0 s'],
	])('writes %d seconds as %s', (seconds, text) => expect(plain.duration(seconds).replaceAll('\u00a0', ' ')).toBe(text))

	it.each([
		[27, '0:27'],
		[90, '1:30'],
		[822, '13:42'],
	])('writes %d seconds on a clock as %s', (seconds, text) => expect(plain.clock(seconds)).toBe(text))

	it('says a range once where its ends are equal', () => {
		expect(plain.range('5', '5')).toBe('5')
		expect(plain.range('5', '8')).toBe('5–8')
	})
})
