import { type Weekday, weekdays } from '../model/quantities.ts'

/** The shortest form that is read. */
const shortest = 3

/** The day that a word stands for, in small letters or not, short or whole: `Mon`, `tues`, `Thurs`, `Fridays`. */
export function weekdayOf(word: string): Weekday | undefined {
	const written = word.toLowerCase().replace(/s$/, '')
	if (written.length < shortest) return undefined
	return weekdays.find(day => day.startsWith(written) || day.startsWith(word.toLowerCase()))
}
