import type { Reader } from '../reader/reader.ts'
import type { NeedMeasure, WeekColumn } from '../volume/measures.ts'
import { volumeWords as words } from '../volume/words.ts'
import { type Drawing, ink } from './drawing.ts'
import { rowsDrawing } from './rows.ts'

/** Hard sets a muscle, a row each; under the name what a week needs of it. */
export function muscleSetsDrawing(muscles: readonly NeedMeasure[], weeks: readonly WeekColumn[], reader: Reader): Drawing {
	const rows = muscles.map(measure => ({ measure, under: needed(measure, reader), look: { color: ink.volume } }))
	return rowsDrawing(rows, weeks, reader)
}

function needed({ need }: NeedMeasure, reader: Reader): string | null {
	if (need === null) return null
	const amounts = need.needed.amounts.flatMap(amount => (amount === null ? [] : [Number(amount.low)]))
	return words.needs(reader.range(reader.number(Math.min(...amounts)), reader.number(Math.max(...amounts))))
}
