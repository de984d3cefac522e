import { weekdays } from '../../model/quantities.ts'
import { weekdayOf } from '../../spelling/weekdays.ts'
import type { Put, ShorthandRule } from './view.ts'

/** Signs and words between two days. */
const joints = ['/', '&', 'and', '+', '|']
/** Days by their letter, where more than one stand together. */
const letters: Readonly<Record<string, string>> = { m: 'monday', w: 'wednesday', f: 'friday', th: 'thursday', tu: 'tuesday' }
const runsOfLetters: Readonly<Record<string, readonly string[]>> = {
	mwf: ['monday', 'wednesday', 'friday'],
	tth: ['tuesday', 'thursday'],
	tuth: ['tuesday', 'thursday'],
}
const partsOfDay: Readonly<Record<string, string>> = { am: 'morning', pm: 'evening' }

const days: readonly (string | undefined)[] = weekdays

const asName = (image: string): Put => ({ type: 'ID', image })
const inList = (days: readonly string[]): Put[] => days.flatMap((day, index) => [...(index > 0 ? [','] : []), asName(day)])

/** `Mon/Wed/Fri`, `Tue & Thu`, `Mon and Wed`, `Mon, Wed and Fri` */
const jointOfDays: ShorthandRule = {
	begins: [...joints, ','],
	read: view => {
		const length = view.word() === ',' ? (joints.includes(view.word(1)) ? 2 : 0) : 1
		const isDay = (word: string) => weekdayOf(word) !== undefined || word in letters
		const before = ['morning', 'evening'].includes(view.before()) ? 2 : 1
		return length > 0 && isDay(view.wordBefore(before)) && isDay(view.word(length)) && !view.startsLine(length)
			? { take: length, put: [','] }
			: undefined
	},
}

/** `MWF`, `Mon-Fri` */
const daysTogether: ShorthandRule = {
	begins: ['days-together'],
	read: view => {
		const run = runsOfLetters[view.word()]
		if (run) return { take: 1, put: inList(run) }
		const [first = -1, last = -1] = view
			.word()
			.split(/[-–]/)
			.map(part => days.indexOf(weekdayOf(part)))
		return first >= 0 && last > first ? { take: 1, put: inList(weekdays.slice(first, last + 1)) } : undefined
	},
}

/** `M` and `W` of `M/W/F` */
const dayLetter: ShorthandRule = {
	begins: Object.keys(letters),
	read: view => {
		const isFirst = ['on', 'available', 'days', 'over'].includes(view.before()) && joints.includes(view.word(1))
		const isNext = view.before() === ',' && weekdayOf(view.wordBefore(2)) !== undefined
		return isFirst || isNext ? { take: 1, put: [asName(letters[view.word()]!)] } : undefined
	},
}

/** `monday wednesday`: days of a list without their comma. */
const missingComma: ShorthandRule = {
	begins: ['a-name'],
	read: view =>
		weekdayOf(view.word()) && weekdayOf(view.wordBefore()) && !view.startsLine() ? { take: 1, put: [',', 0] } : undefined,
}

/** `Mon PM`, `monday am` */
const partOfDay: ShorthandRule = {
	begins: Object.keys(partsOfDay),
	read: view => (weekdayOf(view.wordBefore()) ? { take: 1, put: [partsOfDay[view.word()]!] } : undefined),
}

/** `session two monday`, `move heavy-pull Tue`: the word before the day is missing. */
const bareDay: ShorthandRule = {
	begins: ['a-name'],
	read: view => {
		const run = runsOfLetters[view.word()]
		if ((!weekdayOf(view.word()) && !run) || view.startsLine() || view.before() === 'on') return undefined
		const name = view.before().endsWith('STRING') ? 3 : 2
		if (view.before(name) === 'session') return { take: 1, put: ['on', ...(run ? inList(run) : [0])] }
		return view.before(2) === 'move' && !run ? { take: 1, put: ['to', 0] } : undefined
	},
}

export const dayRules = [jointOfDays, daysTogether, dayLetter, missingComma, partOfDay, bareDay]
