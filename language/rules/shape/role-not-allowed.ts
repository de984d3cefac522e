import type { Block, Item, Movement, Plan } from '../../model/definitions.ts'
import type { Finding, RelatedPlace } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Role } from '../../model/vocabulary.ts'
import { originOf } from '../common/origins.ts'
import { headOf } from '../common/places.ts'
import { type Proposal, soundOnes, withItem } from '../common/proposals.ts'
import { inWords } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import page from './role-not-allowed.md'

const code = 'role-not-allowed'

export const roleNotAllowed: Rule = {
	code,
	area: 'shape',
	level: 'warning',
	summary: 'A movement stands in a role that its definition does not list.',
	source: 'the `role` of the movement',
	fix: 'to confirm',
	since: '0.1.0',
	page,
	check: { block: checkBlock, plan: checkPlan },
}

/** Lighter sets before the work, and a test of where a lifter stands, are open to every movement. */
const openToAll: ReadonlySet<Role> = new Set(['warm-up', 'test'])

function checkBlock(block: Block, programme: Programme): Finding[] {
	return block.sessions
		.flatMap(session => session.items)
		.flatMap(item => {
			const movement = programme.find('movement', item.movement.text)
			if (movement === undefined || allows(movement, item.role)) return []
			const span = headOf(item)
			return [
				{
					...said(item.role, movement, programme),
					span,
					related: rolesPlace(movement),
					corrections: soundOnes(code, block, programme, () => rolesInstead(item, movement, block)),
				},
			]
		})
}

/** What a plan brings into a block's place, or adds to it. */
function checkPlan(plan: Plan, programme: Programme): Finding[] {
	return plan.runs.flatMap(run => {
		const block = programme.find('block', run.block.text)
		const items = block?.sessions.flatMap(session => session.items) ?? []
		return run.changes.flatMap((change): Finding[] => {
			if (change.kind !== 'swap' && change.kind !== 'add') return []
			const movement = programme.find('movement', change.kind === 'swap' ? change.to.text : change.item.movement.text)
			if (movement === undefined || block === undefined) return []
			const added = change.kind === 'add' ? [change.item] : items.filter(item => item.movement.text === change.from.text)
			const wrong = added.find(item => !allows(movement, item.role))
			if (wrong === undefined) return []
			const related: RelatedPlace[] = [{ definition: plan, span: change.span, message: 'This line brings it in.' }]
			if (change.kind === 'swap')
				related.push({ definition: block, span: headOf(wrong), message: `It replaces ${wrong.role} work.` })
			return [{ ...said(wrong.role, movement, programme), span: run.header, related: [...related, ...rolesPlace(movement)] }]
		})
	})
}

function allows(movement: Movement, role: Role): boolean {
	const roles = movement.roles?.value ?? []
	return roles.length === 0 || roles.includes(role) || openToAll.has(role)
}

function said(role: Role, movement: Movement, programme: Programme): Pick<Finding, 'message' | 'source'> {
	const title = movement.title?.text ?? movement.name.text
	const origin = originOf(movement, programme)
	const listed = inWords(movement.roles?.value ?? [], 'or')
	const isHeld = role === 'main' && movement.trains?.value[0] === 'stability'
	const reason = isHeld ? ' In a stability movement position is the limit, not strength.' : ''
	return { message: `${title} stands here as ${role}; its role is ${listed} (${origin}).${reason}`, source: origin }
}

function rolesPlace(movement: Movement): RelatedPlace[] {
	return movement.roles ? [{ definition: movement, span: movement.roles.span, message: 'Its roles stand here.' }] : []
}

function rolesInstead(item: Item, movement: Movement, block: Block): Proposal<Block>[] {
	// A prescription for working sets makes no warm-up.
	const roles = (movement.roles?.value ?? []).filter(role => !openToAll.has(role))
	const title = movement.title?.text ?? movement.name.text
	const span = { start: item.span.start, end: item.movement.span.start }
	return roles.map(role => ({
		correction: {
			title: `Make ${title} ${role === 'accessory' ? 'an accessory' : `${role} work`}`,
			edits: [{ span, text: `${role} ` }],
		},
		changed: withItem(block, item, one => ({ ...one, role })),
	}))
}
