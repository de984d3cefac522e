import type { Block, Session, SessionDay, Turn } from '../../model/definitions.ts'
import { weekCount } from './week-choice.ts'

/** A session on one of its days in a week of its block. */
export interface Placement {
	readonly session: Session
	readonly week: number
	/** `undefined` where the block gives it no day. */
	readonly day: SessionDay | undefined
}

/**
 * Where the sessions of a block stand, week by week, in the order of the block and, of one session, of its days. A turn is counted by the
 * block's own days, from the first day of week 1: what a plan's start cuts off has had its turn all the same.
 */
export function placementsOf(block: Block): readonly Placement[] {
	const weeks = Array.from({ length: weekCount(block) }, (_, index) => index + 1)
	return weeks.flatMap(week =>
		block.sessions.flatMap(session => daysIn(week, session, block).map(day => ({ session, week, day }))),
	)
}

function daysIn(week: number, session: Session, block: Block): readonly (SessionDay | undefined)[] {
	if (session.days.length > 0) return session.days
	const turn = block.turns.find(one => one.sessions.some(name => name.text === session.name.text))
	return turn === undefined || turn.days.length === 0 ? [undefined] : turnsOf(session, turn, week)
}

function turnsOf(session: Session, { sessions, days }: Turn, week: number): readonly SessionDay[] {
	const before = (week - 1) * days.length
	return days.filter((_, index) => sessions[(before + index) % sessions.length]?.text === session.name.text)
}

/** Can a plan move it to another weekday by its name? Of a session on several days nobody could tell which of them is meant. */
export function isMovable({ name, days }: Session, block: Block): boolean {
	return days.length <= 1 && !block.turns.some(turn => turn.sessions.some(one => one.text === name.text))
}

/** Weeks after which the turns of a block begin anew: 1 where every week has the same sessions. */
export function weeksOfARound(block: Block): number {
	return block.turns.reduce((weeks, turn) => leastCommonMultiple(weeks, weeksOfTurn(turn)), 1)
}

function weeksOfTurn({ sessions, days }: Turn): number {
	return days.length === 0 || sessions.length === 0 ? 1 : leastCommonMultiple(sessions.length, days.length) / days.length
}

function leastCommonMultiple(a: number, b: number): number {
	return (a / greatestCommonDivisor(a, b)) * b
}

function greatestCommonDivisor(a: number, b: number): number {
	return b === 0 ? a : greatestCommonDivisor(b, a % b)
}
