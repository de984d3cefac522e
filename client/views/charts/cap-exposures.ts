import type { Reader } from '../reader/reader.ts'
import type { NeedMeasure, WeekColumn } from '../volume/measures.ts'
import { type Drawing, ink } from './drawing.ts'
import { rowsDrawing } from './rows.ts'

/** Days a week of each capped movement: up to its cap in one colour, what is over it in another, the cap as a line. */
export function capExposuresDrawing(
	caps: readonly { readonly measure: NeedMeasure; readonly limit: string }[],
	weeks: readonly WeekColumn[],
	reader: Reader,
): Drawing {
	const rows = caps.map(({ measure, limit }) => ({
		measure,
		under: limit,
		look: { color: ink.volume, rest: { color: ink.error, opacity: 1 }, inside: true },
	}))
	return rowsDrawing(rows, weeks, reader)
}
