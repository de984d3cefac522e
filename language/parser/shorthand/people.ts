import type { ShorthandRule } from './view.ts'

const maxWords = new Set(['max', 'pr', 'pb', '1rm', 'best', 'record'])
const masses = new Set(['kg', 'lb'])
const failedWords = new Set(['failed', 'fail', 'miss'])

/** `deadlift 1RM 160 kg`, `deadlift max: 160 kg` */
const bestBehind: ShorthandRule = {
	begins: ['a-name'],
	read: view => {
		if (view.kind !== 'lifter' || !view.startsLine()) return undefined
		const isOneRm = view.word(1) === '1' && view.word(2) === 'rm'
		if (!isOneRm && !maxWords.has(view.word(1))) return undefined
		const after = isOneRm ? 3 : 2
		const sign = view.word(after) === ':' || view.word(after) === '=' ? 1 : 0
		return view.isNumber(after + sign) ? { take: after + sign, put: ['best', 0] } : undefined
	},
}

/** `weight 72 kg` */
const weight: ShorthandRule = {
	begins: ['weight', 'weighs'],
	read: view => (view.kind === 'lifter' && view.startsLine() ? { take: 1, put: ['bodyweight'] } : undefined),
}

/** `trains north-hall` */
const trainsAt: ShorthandRule = {
	begins: ['trains'],
	read: view =>
		(view.kind === 'lifter' || view.kind === 'team') && view.startsLine() && view.word(1) !== 'at'
			? { take: 1, put: [0, 'at'] }
			: undefined,
}

/** `best deadlift 3 x 160 kg`: the reps before the load. */
const repsFirst: ShorthandRule = {
	begins: ['0'],
	read: view => {
		const isFirst = view.kind === 'lifter' && view.before(2) === 'best' && view.isTimes(1) && view.isNumber(2)
		return isFirst && masses.has(view.unit(3) ?? '') ? { take: 4, put: [2, view.unit(3)!, 'x', 0] } : undefined
	},
}

/** `RPE 8, 70 min`: how a session felt. */
const sessionEffort: ShorthandRule = {
	begins: ['rpe'],
	read: view => {
		const time = [',', 'for', '/'].includes(view.word(2)) ? 3 : 2
		const unit = view.unit(time + 1)
		return view.kind === 'log' && view.startsLine() && view.isNumber(1) && view.isNumber(time) && unit === 'min'
			? { take: time + 2, put: ['felt', 1, 'for', time, unit] }
			: undefined
	},
}

/** `2026-10-05 heavy-pull`: the day of an entry, and the session. */
const bareEntry: ShorthandRule = {
	begins: ['a-date'],
	read: view => (view.kind === 'log' && view.startsLine() ? { take: 1, put: ['on', 0] } : undefined),
}

const bareSession: ShorthandRule = {
	begins: ['a-name'],
	read: view =>
		view.kind === 'log' && view.before(2) === 'on' && ['DATE', 'OTHER_DATE'].includes(view.before()) && !view.startsLine()
			? { take: 1, put: ['session', 0] }
			: undefined,
}

/** In a log, `deadlift 5 x 5 at 100 kg` */
const didWithout: ShorthandRule = {
	begins: ['a-name'],
	read: view => {
		const number = view.word(1) === ':' ? 2 : 1
		const after = view.afterRange(number)
		if (view.word() === 'rpe' || view.word() === 'rir') return undefined
		const isWork = view.isTimes(after) || view.unit(after) !== undefined || [',', '/', '@'].includes(view.word(after))
		return view.kind === 'log' && view.startsLine() && view.isNumber(number) && isWork
			? { take: number, put: ['did', 0] }
			: undefined
	},
}

/** `failed 1`, `, missed 1` */
const failed: ShorthandRule = {
	begins: [...failedWords, ','],
	read: view => {
		const comma = view.word() === ',' ? 1 : 0
		const isFailed = failedWords.has(view.word(comma)) || (comma > 0 && view.word(1) === 'missed')
		return view.kind === 'log' && isFailed && view.isNumber(comma + 1) && view.followsAnEnding
			? { take: comma + 1, put: ['missed'] }
			: undefined
	},
}

/** `did deadlift 100 kg 5/5/5`: the load before the sets. */
const loadBeforeSets: ShorthandRule = {
	begins: ['0'],
	read: view => {
		if (view.kind !== 'log' || !['ID', 'OTHER_NAME'].includes(view.before()) || !masses.has(view.unit(1) ?? '')) return undefined
		const sets: number[] = []
		let at = 2
		while (view.isNumber(at) && !view.startsLine(at)) {
			sets.push(at)
			at += ['/', ','].includes(view.word(at + 1)) ? 2 : 1
		}
		const last = sets[sets.length - 1]
		if (last === undefined || sets.length < 2 || view.isTimes(last + 1)) return undefined
		const put = sets.flatMap((set, index) => [...(index > 0 ? [','] : []), set])
		return { take: last + 1, put: [...put, 'at', 0, view.unit(1)!] }
	},
}

export const peopleRules = [
	bestBehind,
	repsFirst,
	weight,
	trainsAt,
	sessionEffort,
	bareEntry,
	bareSession,
	didWithout,
	failed,
	loadBeforeSets,
]
