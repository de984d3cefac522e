import type * as tree from '../grammar/generated/ast.ts'
import type { Limits } from '../model/definitions.ts'
import type { Fault } from '../model/reading.ts'
import { deviations, estimators } from '../model/vocabulary.ts'
import { fact, type Reader } from './reader.ts'

type Mutable<T> = { -readonly [K in keyof T]: T[K] }

export function readLimits(reader: Reader, node: tree.Limits, faults: readonly Fault[]): Limits {
	const facts: Partial<Mutable<Limits>> = {}
	const owner = node.owner === undefined ? undefined : reader.lifterOrTeam(node, 'owner')
	for (const line of node.lines ?? []) {
		if (reader.common(line, reader.span(node)) || !reader.first(factOf(line), line)) continue
		readFact(reader, line, facts)
	}
	return {
		kind: 'limits',
		owner,
		loadRise: facts.loadRise,
		volumeRise: facts.volumeRise,
		lighterWeekEvery: facts.lighterWeekEvery,
		heavy: facts.heavy,
		heavyHingeAndSquat: facts.heavyHingeAndSquat,
		sessionSeconds: facts.sessionSeconds,
		bestsWeeks: facts.bestsWeeks,
		gatesWeeks: facts.gatesWeeks,
		noSetAbove: facts.noSetAbove,
		muscleSets: facts.muscleSets,
		estimator: facts.estimator,
		deviation: facts.deviation,
		...reader.frame(node, faults),
	}
}

function readFact(reader: Reader, line: tree.LimitsLine, facts: Partial<Mutable<Limits>>): void {
	const span = reader.span(line)
	switch (line.$type) {
		case 'RiseLimit':
			facts[line.what === 'load' ? 'loadRise' : 'volumeRise'] = fact(reader.percent(line, 'percent'), span)
			break
		case 'LighterWeekLimit':
			facts.lighterWeekEvery = fact(reader.countRange(line.range, 'Weeks'), span)
			break
		case 'HeavyLimit': {
			const fromPercent = reader.percent(line, 'percent')
			const sessions = reader.count(line, 'sessions', 'Sessions')
			if (fromPercent && sessions !== undefined) facts.heavy = { value: { fromPercent, sessions }, span }
			break
		}
		case 'HeavyTogetherLimit': {
			const sessions = reader.count(line, 'sessions', 'Sessions')
			const apartDays = reader.count(line, 'days', 'Days')
			if (sessions !== undefined) facts.heavyHingeAndSquat = { value: { sessions, apartDays }, span }
			break
		}
		case 'SessionLimit':
			facts.sessionSeconds = fact(reader.seconds(line.time), span)
			break
		case 'AgeLimit':
			facts[line.what === 'bests' ? 'bestsWeeks' : 'gatesWeeks'] = fact(reader.count(line, 'weeks', 'Weeks'), span)
			break
		case 'NoSetAboveLimit':
			facts.noSetAbove = fact(reader.percent(line, 'percent'), span)
			break
		case 'MuscleSetsLimit':
			facts.muscleSets = fact(reader.countRange(line.range, 'Sets', 0), span)
			break
		case 'EstimateLine':
			facts.estimator = fact(reader.word(line, 'formula', estimators, 'a way to estimate a max'), span)
			break
		case 'DeviationLine':
			facts.deviation = fact(reader.word(line, 'deviation', deviations, 'a deviation'), span)
	}
}

/** The words that a limit is known by; two lines with the same words are one fact stated twice. */
function factOf(line: tree.LimitsLine): string {
	switch (line.$type) {
		case 'RiseLimit':
			return `${line.what} rises`
		case 'LighterWeekLimit':
			return 'a lighter week'
		case 'HeavyLimit':
			return 'heavy from'
		case 'HeavyTogetherLimit':
			return 'heavy hinge and squat'
		case 'SessionLimit':
			return 'session at most'
		case 'AgeLimit':
			return `${line.what} no older than`
		case 'NoSetAboveLimit':
			return 'no set above'
		case 'MuscleSetsLimit':
			return 'muscle sets'
		case 'EstimateLine':
			return 'estimate with'
		case 'DeviationLine':
			return 'deviation'
		default:
			return line.$type
	}
}
