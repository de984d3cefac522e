import type { Reader } from '../reader/reader.ts'
import type { Amount, Measure } from './measures.ts'

/** A figure as it is written in tables and above bars; a dash where there is none. */
export function amountText(amount: Amount, unit: Measure['unit'], reader: Reader): string {
	if (amount === null) return '–'
	const { low, high } = amount
	if (low === high) return inUnit(low, unit, reader)
	if (unit === '%') return reader.percent(low, high)
	// The unit stands once, at the end; minutes and seconds are written out at both ends.
	return unit === 's'
		? reader.range(inUnit(low, unit, reader), inUnit(high, unit, reader))
		: `${reader.number(low)}–${inUnit(high, unit, reader)}`
}

function inUnit(value: string, unit: Measure['unit'], reader: Reader): string {
	switch (unit) {
		case null:
			return reader.number(value)
		case '%':
			return reader.percent(value)
		case 's':
			return reader.duration(Number(value))
		default:
			return reader.mass(value, unit)
	}
}
