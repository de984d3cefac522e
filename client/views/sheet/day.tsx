import { useContext } from 'preact/hooks'
import type { CalendarDate, PartOfDay } from '../../../language/model/quantities.ts'
import type { BlockSheetSession } from '../../../language/reports/block-sheet.ts'
import type { SheetSession } from '../../../language/reports/load-sheet.ts'
import { blockWords as words } from '../block/words.ts'
import { ReaderContext } from '../reader/context.ts'
import { shift } from './weeks.ts'

/** A date, its weekday first. */
export function Day({ date, part }: { date: CalendarDate; part: PartOfDay | null }) {
	const reader = useContext(ReaderContext)
	return (
		<time dateTime={date}>
			<b>
				<bdi>{reader.weekday(date)}</bdi>
			</b>{' '}
			<span>
				<bdi>{reader.day(date)}</bdi>
			</span>
			{part !== null && <span class="part"> {words.part[part]}</span>}
		</time>
	)
}

/** The day of a session of a plan or of a block. */
export function DayOf({ session }: { session: SheetSession | BlockSheetSession }) {
	return 'date' in session ? <Day date={session.date} part={session.part} /> : <DayOfBlock session={session} />
}

/** Some monday: weekdays are named through it. */
const monday = '2024-01-01'
const weekdays = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'] as const

/** The day of a block, which has no date. */
function DayOfBlock({ session: { weekday, day, part } }: { session: BlockSheetSession }) {
	const reader = useContext(ReaderContext)
	const name =
		weekday !== null
			? reader.weekday(shift(monday, weekdays.indexOf(weekday)))
			: day !== null
				? words.day(reader.number(day))
				: words.anyDay
	return (
		<>
			<b>
				<bdi>{name}</bdi>
			</b>
			{part !== null && <span class="part"> {words.part[part]}</span>}
		</>
	)
}
