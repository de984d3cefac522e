import { decimal, exact, hundred } from '../compute/exact.ts'
import { countText, massRangeText, rangeText, signedMassText } from '../compute/loads/wording.ts'
import { plannedGroup } from '../compute/outline/planned-group.ts'
import type { ChangeStep, Effort, Milestone, SetGroup, Work } from '../model/prescription.ts'
import type { Programme } from '../model/programme.ts'
import type { Exact, ExactRange } from '../model/quantities.ts'
import type { PlannedLoad, PlannedSet } from '../model/schedule.ts'

/** What one set asks for, in the words of the language, with progression and deload worked in: "5 reps at 72.5% rpe 8 rest 3 min". */
export function setText(set: PlannedSet): string {
	const parts = [
		workText(set.work),
		loadText(set.load),
		set.clusters && `in clusters of ${set.clusters.reps} resting ${secondsText(set.clusters.restSeconds)}`,
		set.effort && effortText(set.effort),
		set.until && `until ${effortText(set.until)}`,
		set.eachSide ? 'each side' : undefined,
		set.tempo && `tempo ${set.tempo.text}`,
		`rest ${secondsText(set.restSeconds)}`,
	]
	return parts.filter(part => part !== undefined).join(' ')
}

/** "5 reps", "12 reps to failure", "30-45 s", "20 m", "60 s for reps". */
function workText(work: Work): string {
	switch (work.kind) {
		case 'reps': {
			const reps = `${countText(work.reps)} ${work.reps.to === 1 ? 'rep' : 'reps'}`
			return work.toFailure ? `${reps} to failure` : work.orMore ? `${reps} or more` : reps
		}
		case 'hold':
			return `${rangeText(work.seconds)} s`
		case 'carry':
			return `${rangeText(work.metres)} m${work.forTime ? ' for time' : ''}`
		case 'reps-in-time':
			return `${timeText(work.seconds)} for reps`
		case 'time':
			return timeText(work.seconds)
	}
}

/** "45 s", "20 min", "20-30 min". */
function timeText(seconds: ExactRange): string {
	if (seconds.from.equals(seconds.to)) return secondsText(seconds.from)
	const sixty = exact(60)
	const inMinutes = seconds.from.compare(sixty) >= 0
	return inMinutes ? `${rangeText({ from: seconds.from.div(sixty), to: seconds.to.div(sixty) })} min` : `${rangeText(seconds)} s`
}

function loadText(load: PlannedLoad): string | undefined {
	const words = loadWords(load)
	return words && `at ${words}`
}

/** "70% of base", "bodyweight + 10 kg", "8 rm": a load as it is asked for; `undefined` where nothing or an effort alone is. */
export function loadWords(load: PlannedLoad): string | undefined {
	switch (load.kind) {
		case 'none':
		case 'effort':
			return undefined
		case 'warm-up':
			return `${decimal(load.share.mul(hundred))}% of the first working load`
		case 'percent': {
			const of = load.of === 'best' ? '' : load.of === 'base' ? ' of base' : ' of top set'
			return `${rangeText(load.percent)}%${of}${addedText(load)}`
		}
		case 'mass': {
			const range = { from: load.from.amount.mul(load.share), to: load.to.amount.mul(load.share) }
			return `${massRangeText(range, load.to.unit)}${addedText(load)}`
		}
		case 'bodyweight': {
			const extra = load.extra === undefined ? '' : ` ${signedMassText(load.extra.amount.mul(load.share), load.extra.unit)}`
			return `bodyweight${extra}${addedText(load)}`
		}
		case 'of-bodyweight':
			return `${rangeText(load.percent)}% of bodyweight${addedText(load)}`
		case 'rm':
			return `${load.reps} rm${load.share.equals(1) ? '' : ` x ${decimal(load.share.mul(hundred))}%`}${addedText(load)}`
	}
}

/** "once 3 x 12 reps are reached: add 2.5 kg", "… : move to Weighted plank, 3 x 30 s". */
export function milestoneText({ reached, then }: Milestone, programme: Programme): string {
	const next = then.kind === 'change' ? changeText(then) : `move to ${stepText(then, programme)}`
	return `once ${groupText(reached)} ${reached.sets.to === 1 ? 'is' : 'are'} reached: ${next}`
}

function stepText({ movement, prescription }: Milestone['then'] & { readonly kind: 'move' }, programme: Programme): string {
	const title = programme.find('movement', movement.text)?.title?.text ?? movement.text
	return [title, ...(prescription?.groups ?? []).map(groupText)].join(', ')
}

/** "3 x 12 reps at 40 kg": a set group as it is written, but for what every set has anyway. */
function groupText(group: SetGroup): string {
	const { load } = plannedGroup(group, 'best', 'accessory')
	const parts = [`${countText(group.sets)} x ${workText(group.work)}`, loadText(load), group.effort && effortText(group.effort)]
	return [...parts, group.eachSide ? 'each side' : undefined].filter(part => part !== undefined).join(' ')
}

/** "add 2.5 kg", "take 0.5 rpe". */
export function changeText({ amount, unit }: ChangeStep): string {
	const one = amount.abs().equals(1) && (unit === 'reps' || unit === 'sets')
	return `${amount.s < 0n ? 'take' : 'add'} ${decimal(amount.abs())}${unit === '%' ? '' : ' '}${one ? unit.slice(0, -1) : unit}`
}

function addedText({ added }: Extract<PlannedLoad, { readonly added: unknown }>): string {
	return added.map(mass => ` ${signedMassText(mass.amount, mass.unit)}`).join('')
}

function effortText({ scale, value, atMost }: Effort): string {
	return `${scale} ${atMost ? 'at most ' : ''}${rangeText(value)}`
}

/** "45 s", "3 min", "1 min 30 s". */
function secondsText(seconds: Exact): string {
	const minutes = seconds.div(exact(60)).floor()
	const rest = seconds.sub(minutes.mul(exact(60)))
	if (minutes.equals(0)) return `${decimal(rest)} s`
	return rest.equals(0) ? `${decimal(minutes)} min` : `${decimal(minutes)} min ${decimal(rest)} s`
}
