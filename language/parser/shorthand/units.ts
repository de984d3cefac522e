/** Our units and words of counting, and what else is written for them. */
const spellings: Readonly<Record<string, readonly string[]>> = {
	kg: ['kgs', 'k', 'kilo', 'kilos', 'kilogram', 'kilograms'],
	lb: ['lbs', 'pound', 'pounds', '#'],
	s: ['sec', 'secs', 'second', 'seconds', '"', '″', "''", '’’', '”'],
	min: ['mins', 'minute', 'minutes', "'", '′', '’'],
	m: ['metre', 'metres', 'meter', 'meters', 'mtr'],
	rm: [],
	'%': ['percent', 'pct', '％'],
	reps: ['repetitions'],
	rep: ['repetition'],
}

const units = new Map(Object.entries(spellings).flatMap(([unit, others]) => [unit, ...others].map(word => [word, unit] as const)))

/** What is written for a unit of ours beside its own name. */
export const otherUnitWords: readonly string[] = Object.values(spellings).flat()

/** The unit of ours that a word in small letters stands for. */
export function unitOf(word: string): string | undefined {
	return units.get(word)
}
