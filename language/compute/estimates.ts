import type { Exact, Mass } from '../model/quantities.ts'
import type { Estimator } from '../model/vocabulary.ts'
import { compare, decimal, exact, hundred, one, zero } from './exact.ts'
import { massText } from './mass.ts'

/**
 * The one-rep max that a set to failure points to, and the ways back: the share of the max that so many reps allow, and the reps that a
 * share allows.
 *
 * Each estimator is one function, the share of the max at n reps to failure, and its inverse. Shares are rational where the formula is,
 * else kept to 12 places (so a load of any lifter is right to 1e-9, and the same on every machine).
 */
interface Formula {
	readonly title: string
	readonly source: string
	/** load / max; `undefined` outside the formula's domain. */
	readonly share: (reps: Exact) => Exact | undefined
	/** Reps to failure at load / max; `undefined` where no number of reps has that share. */
	readonly reps: (share: Exact) => Exact | undefined
	/** The max in words, from the load in words. */
	readonly maxInWords: (load: string, reps: string) => string
	/** The share in words. */
	readonly shareInWords: (reps: string) => string
}

const sharePlaces = 12
const repsPlaces = 9

/** What a double comes to, to so many places; `undefined` where it is no number or has grown past every limit. */
function computed(value: number, places: number): Exact | undefined {
	return Number.isFinite(value) ? exact(value.toFixed(places)) : undefined
}

/** max = load × (1 + n × slope). */
function rising(slope: Exact, slopeInWords: (reps: string) => string): Omit<Formula, 'title' | 'source'> {
	return {
		share: reps => one.div(one.add(slope.mul(reps))),
		reps: share => one.div(share).sub(one).div(slope),
		maxInWords: (load, reps) => `${load} × (1 + ${slopeInWords(reps)})`,
		shareInWords: reps => `1 ÷ (1 + ${slopeInWords(reps)})`,
	}
}

/** max = load × 100 / (floor + height × e^(−rate × n)). */
function decaying(floor: number, height: number, rate: number): Omit<Formula, 'title' | 'source'> {
	const percentInWords = (reps: string) => `${floor} + ${height} × e^(−${rate} × ${reps})`
	return {
		share: reps => computed((floor + height * Math.exp(-rate * reps.valueOf())) / 100, sharePlaces),
		reps: share => {
			const left = (100 * share.valueOf() - floor) / height
			return computed(-Math.log(left) / rate, repsPlaces)
		},
		maxInWords: (load, reps) => `100 × ${load} ÷ (${percentInWords(reps)})`,
		shareInWords: reps => `(${percentInWords(reps)}) %`,
	}
}

/** Percents by whole reps, on a straight line between two rows; nothing outside the first and the last. */
function table(rows: readonly (readonly [reps: number, percent: number])[]): Omit<Formula, 'title' | 'source'> {
	const points = rows.map(([reps, percent]) => ({ reps: exact(reps), share: exact(percent).div(hundred) }))
	type Point = (typeof points)[number]
	const between = (value: Exact, known: keyof Point, wanted: keyof Point) => {
		for (const [index, from] of points.entries()) {
			const to = points[index + 1] ?? from
			const direction = compare(value, from[known]) * compare(value, to[known])
			if (direction > 0) continue
			if (value.equals(from[known])) return from[wanted]
			const way = value.sub(from[known]).div(to[known].sub(from[known]))
			return from[wanted].add(way.mul(to[wanted].sub(from[wanted])))
		}
		return undefined
	}
	const share = (reps: Exact) => between(reps, 'reps', 'share')
	const percentInWords = (reps: string) => `${decimal((share(exact(reps)) ?? zero).mul(hundred))} %`
	return {
		share,
		reps: value => between(value, 'share', 'reps'),
		maxInWords: (load, reps) => `${load} ÷ ${percentInWords(reps)} at ${reps} reps`,
		shareInWords: reps => `${percentInWords(reps)} at ${reps} reps`,
	}
}

const formulas: Readonly<Record<Estimator, Formula>> = {
	epley: {
		title: 'Epley',
		source: 'Epley 1985 (formula from memory)',
		...rising(one.div(exact(30)), reps => `${reps}/30`),
	},
	brzycki: {
		title: 'Brzycki',
		source: 'Brzycki 1993, JOPERD 64(1):88-90 (formula from memory)',
		share: reps => exact(37).sub(reps).div(exact(36)),
		reps: share => exact(37).sub(share.mul(exact(36))),
		maxInWords: (load, reps) => `${load} × 36 ÷ (37 − ${reps})`,
		shareInWords: reps => `(37 − ${reps}) ÷ 36`,
	},
	lander: {
		title: 'Lander',
		source: 'Lander 1985, NSCA J 6:60-61, as quoted from LeSuer et al. 1997, J Strength Cond Res 11:211-213',
		share: reps => exact('101.3').sub(exact('2.67123').mul(reps)).div(hundred),
		reps: share => exact('101.3').sub(share.mul(hundred)).div(exact('2.67123')),
		maxInWords: (load, reps) => `100 × ${load} ÷ (101.3 − 2.67123 × ${reps})`,
		shareInWords: reps => `(101.3 − 2.67123 × ${reps}) %`,
	},
	lombardi: {
		title: 'Lombardi',
		source: 'Lombardi 1989 (formula from memory)',
		share: reps => computed(reps.valueOf() ** -0.1, sharePlaces),
		reps: share => computed(share.valueOf() ** -10, repsPlaces),
		maxInWords: (load, reps) => `${load} × ${reps}^0.1`,
		shareInWords: reps => `1 ÷ ${reps}^0.1`,
	},
	mayhew: { title: 'Mayhew', source: 'Mayhew et al. 1992 (formula from memory)', ...decaying(52.2, 41.9, 0.055) },
	oconner: {
		title: 'O’Conner',
		source: 'O’Conner et al. 1989 (formula from memory)',
		...rising(exact('0.025'), reps => `0.025 × ${reps}`),
	},
	wathan: { title: 'Wathan', source: 'Wathan 1994 (formula from memory)', ...decaying(48.8, 53.8, 0.075) },
	chart: {
		title: 'Training load chart',
		source: 'NSCA Training Load Chart, 1 to 10 and 12 reps',
		...table([
			[1, 100],
			[2, 95],
			[3, 93],
			[4, 90],
			[5, 87],
			[6, 85],
			[7, 83],
			[8, 80],
			[9, 77],
			[10, 75],
			[12, 70],
		]),
	},
	textbook: {
		title: 'Textbook table',
		source:
			'Haff & Triplett (eds), Essentials of Strength Training and Conditioning, 4th ed., table 17.7 (11 reps and more from memory)',
		...table([
			[1, 100],
			[2, 95],
			[3, 93],
			[4, 90],
			[5, 87],
			[6, 85],
			[7, 83],
			[8, 80],
			[9, 77],
			[10, 75],
			[11, 70],
			[12, 67],
			[15, 65],
		]),
	},
}

/**
 * The one-rep max that a load for `repsToFailure` reps points to, in the load's unit. One rep gives the load itself, whatever the
 * formula says there. `undefined` below one rep and outside the formula's domain.
 */
export function estimateMax(load: Exact, repsToFailure: Exact, estimator: Estimator): Exact | undefined {
	if (repsToFailure.equals(one)) return load
	return repsToFailure.compare(one) < 0 ? undefined : rawFormula(load, repsToFailure, estimator)
}

/** The formula as it was published, which for most of them is not the load at one rep. `undefined` outside its domain. */
export function rawFormula(load: Exact, reps: Exact, estimator: Estimator): Exact | undefined {
	const ratio = formulas[estimator].share(reps)
	return ratio === undefined || ratio.compare(zero) <= 0 ? undefined : load.div(ratio)
}

/**
 * load / max for a set that leaves nothing after `repsToFailure` reps (reps and reserve; halves too). The exact inverse of
 * `estimateMax`.
 */
export function shareAt(repsToFailure: Exact, estimator: Estimator): Exact | undefined {
	const max = estimateMax(one, repsToFailure, estimator)
	return max === undefined ? undefined : one.div(max)
}

/**
 * Reps to failure at load / max. A share between the formula's own at one rep and the whole max allows one. `undefined` above the max,
 * at nothing, and where the formula or table has no number of reps with that share.
 */
export function repsPossible(share: Exact, estimator: Estimator): Exact | undefined {
	if (share.compare(zero) <= 0 || share.compare(one) > 0) return undefined
	const reps = formulas[estimator].reps(share)
	return reps !== undefined && reps.compare(one) < 0 ? one : reps
}

/** "Epley", "Training load chart". */
export function estimatorTitle(estimator: Estimator): string {
	return formulas[estimator].title
}

/** Where the formula or the table was published, and whether it was read there. */
export function estimatorSource(estimator: Estimator): string {
	return formulas[estimator].source
}

/** "Epley: 100 kg × (1 + 5/30)": how the max comes about. */
export function estimateText(load: Mass, repsToFailure: Exact, estimator: Estimator): string {
	if (repsToFailure.equals(one)) return `${massText(load)} for one rep is the max`
	return `${estimatorTitle(estimator)}: ${formulas[estimator].maxInWords(massText(load), decimal(repsToFailure))}`
}

/** "Epley: 1 ÷ (1 + 7/30)": how the share of the max comes about. */
export function shareText(repsToFailure: Exact, estimator: Estimator): string {
	if (repsToFailure.equals(one)) return 'one rep to failure is the whole max'
	return `${estimatorTitle(estimator)}: ${formulas[estimator].shareInWords(decimal(repsToFailure))}`
}
