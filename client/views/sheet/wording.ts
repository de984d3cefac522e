import type { SheetItem, SheetRange, SheetSet } from '../../../language/reports/load-sheet.ts'
import type { Reader } from '../reader/reader.ts'
import type { FoldedSets } from './fold.ts'
import { sheetWords as words } from './words.ts'

/** `4 × 5`, `3–4 × 8`, `3 × 30 s`, `2 × 20 m`, `2 × 60 s for reps`, `4 × 6 in clusters of 2, 20 s between`. */
export function setsAndWork(fold: FoldedSets, reader: Reader): string {
	const sets = reader.range(reader.number(fold.firm), reader.number(fold.firm + fold.optional))
	const work = workOf(fold.set, reader)
	return work === null ? sets : `${sets} × ${work}`
}

/** What one set asks for: `5`, `5 or more`, `30 s`, `20 m`; `null` where nothing is said. */
export function workOf(set: SheetSet, reader: Reader): string | null {
	if (set.reps !== null) {
		const reps = numbers(set.reps, reader)
		return inClusters(set.openEnded ? words.orMore(reps) : reps, set, reader)
	}
	if (set.seconds !== null) {
		const { from, to } = set.seconds
		// 30–45 s, but 50 s–1 min 40 s: the unit stands once where both ends have it.
		const time =
			from !== to && to < 60
				? `${reader.number(from)}–${reader.duration(to)}`
				: reader.range(reader.duration(from), reader.duration(to))
		return set.forReps ? words.forReps(time) : time
	}
	if (set.metres === null) return null
	const distance = `${numbers(set.metres, reader)}\u00a0m`
	return set.forTime ? words.forTime(distance) : distance
}

function inClusters(work: string, { clusterReps, clusterRestSeconds }: SheetSet, reader: Reader): string {
	if (clusterReps === null || clusterRestSeconds === null) return work
	return words.inClusters(work, reader.number(clusterReps), reader.duration(clusterRestSeconds))
}

/** `112.5 kg`, `110–115 kg`, `+10 kg` on top of bodyweight, `bodyweight` alone; `null` where there is none. */
export function loadOf(set: SheetSet, item: Pick<SheetItem, 'loadAdded'>, reader: Reader): string | null {
	if (set.load === null) return null
	if (item.loadAdded && Number(set.load) === 0 && set.loadTo === null) return words.bodyweight
	const sign = item.loadAdded && !set.load.startsWith('-') ? '+' : ''
	if (set.loadTo === null || set.loadTo === set.load) return sign + reader.mass(set.load, set.unit)
	return `${sign}${reader.number(set.load)}–${reader.mass(set.loadTo, set.unit)}`
}

/** `70%`, `70% of top set`: of the best, unless it says of what; `null` where the load is no percent. */
export function percentOf({ percent, of }: SheetSet, reader: Reader): string | null {
	if (percent === null) return null
	const amount = reader.percent(percent.from, percent.to)
	return of === null || of === 'best' ? amount : words.percentOf(amount, of.replaceAll('-', ' '))
}

/** More digits than these say nothing to a person at a bar; how the load came about has them all. */
const exactDigits = 100

/** The load before rounding, where rounding has changed it. */
export function exactOf({ exact, load }: SheetSet, reader: Reader): string | null {
	if (exact === null || load === null || exact === load) return null
	return words.exact(reader.number(Math.round(Number(exact) * exactDigits) / exactDigits))
}

/** `RPE 8`, `RIR 1–2`, `RPE at most 8`, `RPE 8, until RPE 9`. */
export function effortOf(set: SheetSet, reader: Reader): string | null {
	const { rpe, rir, effortAtMost, untilRpe, untilRir } = set
	const most = (effort: string) => (effortAtMost ? words.atMost(effort) : effort)
	const parts = [
		rpe === null ? null : `RPE ${most(decimals(rpe, reader))}`,
		rir === null ? null : `RIR ${most(decimals(rir, reader))}`,
		untilRpe === null ? null : words.until(`RPE ${reader.number(untilRpe)}`),
		untilRir === null ? null : words.until(`RIR ${reader.number(untilRir)}`),
	].filter(part => part !== null)
	return parts.length === 0 ? null : parts.join(', ')
}

/** `25 + 20`, heaviest first; `null` where no bar is loaded. */
export function discsOf(set: SheetSet, reader: Reader): string | null {
	if (set.perSide === null) return null
	if (set.perSide.length === 0) return words.noDiscs
	return set.perSide.map(disc => reader.number(disc)).join(' + ')
}

function numbers(range: SheetRange<number>, reader: Reader): string {
	return reader.range(reader.number(range.from), reader.number(range.to))
}

function decimals(range: SheetRange<string>, reader: Reader): string {
	return reader.range(reader.number(range.from), reader.number(range.to))
}
