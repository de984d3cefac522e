import type { CountRange, Exact, ExactRange, Unit } from '../../model/quantities.ts'
import { decimal } from '../exact.ts'

/** "70", "75-80". */
export function rangeText(range: ExactRange): string {
	return range.from.equals(range.to) ? decimal(range.from) : `${decimal(range.from)}-${decimal(range.to)}`
}

/** "8", "6-8". */
export function countText(range: CountRange): string {
	return range.from === range.to ? String(range.from) : `${range.from}-${range.to}`
}

/** "112 kg", "120-128 kg". */
export function massRangeText(range: ExactRange, unit: Unit): string {
	return `${rangeText(range)} ${unit}`
}

/** "+ 5 kg", "− 5 kg". */
export function signedMassText(amount: Exact, unit: Unit): string {
	return `${amount.s < 0n ? '−' : '+'} ${decimal(amount.abs())} ${unit}`
}
