/** The middle value, and the one that 95 of 100 do not exceed. */
export function summary(times: readonly number[]): { median: number; p95: number } {
	const sorted = [...times].sort((a, b) => a - b)
	const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN
	return { median: at(0.5), p95: at(0.95) }
}

export const milliseconds = (value: number) => `${value < 10 ? value.toFixed(1) : Math.round(value)} ms`
