import type { Gym, Lifter, Movement } from '../../model/definitions.ts'
import type { Exact, ExactRange, Unit } from '../../model/quantities.ts'
import type { Step, Steps } from '../../model/schedule.ts'
import { decimal, zero } from '../exact.ts'
import { type Implement, implementFor } from '../implement.ts'
import { nearestLoad } from '../loading.ts'
import { inUnit, massText } from '../mass.ts'
import type { Unknown } from './reference.ts'
import { massRangeText } from './wording.ts'

/** What a lifter finds on the bar, or in each hand. */
export interface OnTheBar {
	readonly range: ExactRange
	readonly perSide: readonly Exact[] | undefined
	readonly beyond: boolean
	readonly under: boolean
	readonly steps: Steps
}

/**
 * The loads nearest to an exact one, or to both ends of a range, that a gym can make for a movement and a lifter. Masses are in `unit`.
 */
export function loadable(
	exact: ExactRange,
	movement: Movement | undefined,
	gym: Gym | undefined,
	unit: Unit,
	uses: Lifter['uses'],
): OnTheBar | Unknown {
	// An unknown movement is reported where it is named; its written loads still stand.
	const implement: Implement | Unknown =
		movement === undefined ? { kind: 'free', name: undefined } : implementFor(movement, gym, unit, uses)
	if ('missing' in implement) return { missing: implement.missing, reason: `${implement.reason}.` }
	// Nothing added is nothing to load; help on an assisted lift comes as it is written.
	if (movement?.loadAdded && exact.to.compare(zero) <= 0) {
		return { range: exact, perSide: undefined, beyond: false, under: false, steps: () => [] }
	}
	const round = gym?.round ?? 'nearest'
	const low = nearestLoad(exact.from, implement, unit, round)
	const high = exact.from.equals(exact.to) ? low : nearestLoad(exact.to, implement, unit, round)
	if ('missing' in low) return { missing: low.missing, reason: `${low.reason}.` }
	if ('missing' in high) return { missing: high.missing, reason: `${high.reason}.` }
	const range = { from: low.load, to: high.load }
	const { perSide, beyond, under } = low
	const steps = () => {
		const hands = (movement?.hands ?? 1) > 1 ? ' In each hand.' : ''
		const note = beyond ? ' More cannot be loaded.' : under ? ' Less cannot be loaded.' : ''
		const isPlain = implement.kind === 'free' && hands === ''
		const text = () => `${loadableText(range, implement, perSide, gym, unit)}${note}${hands}`
		return [...insteadOf(implement, movement, uses), ...(isPlain ? [] : [{ text: text() }])]
	}
	return { range, perSide, beyond, under, steps }
}

/** What the lifter takes in place of what the movement asks for. */
function insteadOf(implement: Implement, movement: Movement | undefined, uses: Lifter['uses']): readonly Step[] {
	if (implement.kind === 'discs') return []
	const isAsked = (word: string) => movement?.equipment.some(one => one.value === word) ?? false
	const use = uses.find(one => one.implement.text === implement.name && isAsked(one.insteadOf.text))
	const spoken = (name: string) => name.replaceAll('-', ' ')
	return use ? [{ text: `The ${spoken(use.implement.text)} in place of the ${spoken(use.insteadOf.text)}.` }] : []
}

function loadableText(
	range: ExactRange,
	implement: Implement,
	perSide: readonly Exact[] | undefined,
	gym: Gym | undefined,
	unit: Unit,
): string {
	const place = gym === undefined ? 'with the usual bar and discs' : `in ${gym.title?.text ?? gym.name.text}`
	const rule = gym?.round === 'down' ? 'Next lower load' : gym?.round === 'up' ? 'Next higher load' : 'Nearest load'
	const loads = massRangeText(range, unit)
	const discs =
		perSide === undefined || perSide.length === 0 ? 'no discs' : `${perSide.map(disc => decimal(disc)).join(' + ')} ${unit}`
	switch (implement.kind) {
		case 'bar': {
			const part = (amount: Exact) => massText({ amount: inUnit({ amount, unit: implement.unit }, unit), unit })
			const collars = implement.collars.equals(zero) ? '' : `, collars ${part(implement.collars)}`
			return `${rule} ${place}: ${loads} (bar ${part(implement.mass)}${collars}, each side ${discs}).`
		}
		case 'discs':
			return `${rule} of discs ${place}: ${loads}.`
		case 'row':
			return `${rule} ${place}: ${loads} (${implement.name.replaceAll('-', ' ')}).`
		case 'free':
			return `Load: ${loads}.`
	}
}
