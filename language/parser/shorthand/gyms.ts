import type { ShorthandRule } from './view.ts'

const masses = new Set(['kg', 'lb'])

/** `plates 4x20kg`: how many of a disc, before its mass. */
const countFirst: ShorthandRule = {
	begins: ['0'],
	read: view => {
		const isFirst = view.kind === 'gym' && ['plates', ','].includes(view.before()) && view.isTimes(1) && view.isNumber(2)
		return isFirst && masses.has(view.unit(3) ?? '') ? { take: 4, put: [2, view.unit(3)!, 'x', 0] } : undefined
	},
}

/** `discs 20 kg x 4`: what lies on the bar, by its other names. */
const otherPlates: ShorthandRule = {
	begins: ['plate', 'disc', 'discs', 'disk', 'disks', 'bumpers', 'weights'],
	read: view => {
		const number = view.word(1) === ':' ? 2 : 1
		return view.kind === 'gym' && view.startsLine() && view.isNumber(number) ? { take: number, put: ['plates'] } : undefined
	},
}

/** `bar 20 kg` */
const barWithoutName: ShorthandRule = {
	begins: ['bar'],
	read: view => (view.kind === 'gym' && view.isNumber(1) ? { take: 1, put: [0, { type: 'ID', image: 'barbell' }] } : undefined),
}

/** `barbell 20 kg`, `kettlebell 16 kg, 24 kg`: the word before the name is missing. */
const implementFirst: ShorthandRule = {
	begins: ['a-name'],
	read: view => {
		const isLine = view.kind === 'gym' && view.startsLine() && view.isNumber(1)
		if (!isLine || !(masses.has(view.unit(2) ?? '') || view.word(2) === ',')) return undefined
		return { take: 1, put: [/bar(bell)?$/.test(view.word()) ? 'bar' : 'fixed', 0] }
	},
}

export const gymRules = [countFirst, otherPlates, barWithoutName, implementFirst]
