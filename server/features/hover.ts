import { type Hover, MarkupKind } from 'vscode-languageserver'
import { schedulePlan } from '../../language/compute/schedule.ts'
import type { SetGroup } from '../../language/model/prescription.ts'
import type { ScheduledItem, ScheduledSession } from '../../language/model/schedule.ts'
import type { Span } from '../../language/model/text.ts'
import type { Picked } from '../../language/reports/chosen-plan.ts'
import { describe } from '../../language/reports/description.ts'
import { explainBest, explainItem } from '../../language/reports/explanation.ts'
import { milestoneText } from '../../language/reports/set-text.ts'
import { ruleOf } from '../../language/rules/registry.ts'
import type { Folder } from '../../language/workspace/folder.ts'
import { isPicked, plansRunning } from '../chosen-plans.ts'
import type { Feature } from '../feature.ts'
import { definitionAt, type Found, holds, namedAt, type Target, titleOf } from '../lookup.ts'
import { asMarkdown, escaped } from '../markdown.ts'
import { rangeOf } from '../positions.ts'
import { groupsIn, itemsIn } from '../prescriptions.ts'
import { pageUri } from '../rule-pages.ts'
import { type WordMeaning, wordMeaningAt } from '../word-meaning.ts'

/** More lifters than this make a hover that nobody reads; the sheets show all. */
const mostPlans = 3

/** Says what a name is, how a load came about, what a rule wants, and what a word of the language means. */
export const hover: Feature = {
	capabilities: { hoverProvider: true },
	register({ connection, workspace, chosen }) {
		connection.onHover(({ textDocument, position }): Hover | null => {
			const found = definitionAt(workspace, textDocument.uri, position)
			const shown =
				found &&
				(ruleHover(found) ??
					nameHover(found) ??
					wordHover(
						wordMeaningAt(found, workspace),
						milestoneHover(found) ?? loadHover(found, chosen.pickedIn(textDocument.uri)) ?? bestHover(found),
					))
			if (!found || !shown) return null
			const range = rangeOf(found.file, found.start + shown.span.start, found.start + shown.span.end)
			return { contents: { kind: MarkupKind.Markdown, value: shown.text }, range }
		})
	},
}

interface Shown {
	readonly span: Span
	readonly text: string
}

/** What a word means, and what comes of it there: of a word of the language the meaning first, of a number the other. */
function wordHover(meaning: WordMeaning | undefined, outcome: Shown | undefined): Shown | undefined {
	if (!meaning || !outcome) return outcome ?? meaning
	const texts = meaning.isKeyword ? [meaning.text, outcome.text] : [outcome.text, meaning.text]
	return { span: meaning.span, text: texts.join('\n\n---\n\n') }
}

function nameHover(found: Found): Shown | undefined {
	const named = namedAt(found)
	if (!named) return undefined
	const { target, name } = named
	if (target.kind === 'session') return { span: name, text: sessionText(target, found) }
	return { span: name, text: asMarkdown(describe(target.definition, found.folder)) }
}

/** What a session is, wherever it is named. */
function sessionText({ definition, session }: Target & { kind: 'session' }, { folder }: Found): string {
	const items = session.items.map(({ role, movement }) => {
		const named = folder.find('movement', movement.text)
		return `${role} ${named ? titleOf(named) : movement.text}`
	})
	const heading = `**${escaped(session.title?.text ?? session.name.text)}** (session of ${escaped(titleOf(definition))})`
	return items.length > 0 ? `${heading}\n\n${escaped(items.join(', '))}` : heading
}

function ruleHover({ definition, offset }: Found): Shown | undefined {
	const names = [
		...definition.allows.map(allow => allow.rule),
		...(definition.kind === 'rules' ? definition.levels.map(line => line.rule) : []),
	]
	const name = names.find(one => holds(one.span, offset))
	const rule = name && ruleOf(name.text)
	if (!name || !rule) return undefined
	const text = `**${escaped(rule.code)}** (${rule.level})\n\n${escaped(rule.summary)}\n\n_Source: ${escaped(rule.source)}_ · [Read more](${pageUri(rule.code)})`
	return { span: name.span, text }
}

/** A best that is written as a set: the max that it points to. */
function bestHover({ definition, offset, folder }: Found): Shown | undefined {
	if (definition.kind !== 'lifter') return undefined
	const best = definition.bests.find(({ movement, span }) => movement.span.end < offset && offset <= span.end)
	const lines = best && explainBest(best, definition, folder)
	return lines && { span: { start: best.movement.span.end + 1, end: best.span.end }, text: lines.map(escaped).join('  \n') }
}

/** What a milestone waits for, and what comes then. */
function milestoneHover({ definition, offset, folder }: Found): Shown | undefined {
	const milestone = itemsIn(definition)
		.flatMap(item => item.milestones)
		.find(one => holds(one.span, offset))
	if (!milestone) return undefined
	return { span: milestone.span, text: `${escaped(milestoneText(milestone, folder))}.` }
}

/**
 * The loads that a prescription gives the lifters who train by it, each with its way: of a block those of the picked plan, else all; of a
 * plan what it adds.
 */
function loadHover({ definition, offset, folder }: Found, picked: Picked | undefined): Shown | undefined {
	const group = groupsIn(definition).find(one => holds(one.span, offset))
	if (!group) return undefined
	const running = definition.kind === 'plan' ? folder.plansIn(definition) : plansRunning(definition, folder)
	const ofPicked = running.filter(plan => isPicked(plan, picked))
	const plans = ofPicked.length > 0 ? ofPicked : running
	const ways = plans.flatMap(plan => {
		const days = daysWith(group, schedulePlan(plan, folder).sessions)
		return days.length > 0 ? [{ plan, days }] : []
	})
	if (ways.length === 0) {
		const why = definition.kind === 'plan' ? 'No session of this plan has it' : 'No plan runs this block yet'
		return { span: group.span, text: `${why}, so there is no load to show.` }
	}
	const shown = ways.slice(0, mostPlans).map(({ plan, days }) => {
		const lifter = folder.find('lifter', plan.lifter.text)
		const heading = `**${escaped(lifter ? titleOf(lifter) : plan.lifter.text)}** (${escaped(plan.name.text)})`
		return `${heading}\n\n${wayOfLoad(days, group, folder)}`
	})
	const more = ways.length > mostPlans ? [`_and ${ways.length - mostPlans} more plans_`] : []
	return { span: group.span, text: [...shown, ...more].join('\n\n---\n\n') }
}

/** An item that has a set group, on a day of a plan. */
interface Day {
	readonly session: ScheduledSession
	readonly item: ScheduledItem
}

/** A set knows its group by identity: spans of blocks and plans count from places of their own. */
function daysWith(group: SetGroup, sessions: readonly ScheduledSession[]): Day[] {
	return sessions.flatMap(session => {
		const item = session.items.find(one => one.sets.some(set => set.group === group))
		return item ? [{ session, item }] : []
	})
}

/** What the sets of a group ask for and how their loads came about: one explanation a week, where weeks differ, or a day, where an item stands on several. */
function wayOfLoad(days: readonly Day[], group: SetGroup, folder: Folder): string {
	const isOfOneDay = new Set(days.map(({ session }) => session.weekday)).size < 2
	const byText = new Map<string, Set<string>>()
	for (const { session, item } of days) {
		const text = explainItem(item, folder)
			// Neighbours that ask for the same are explained together, whichever group they are of.
			.filter(({ from, to }) => item.sets.slice(from - 1, to).some(set => set.group === group))
			.flatMap(({ heading, lines }) => [heading, ...lines])
			.map(escaped)
			.join('  \n')
		const week = isOfOneDay ? String(session.runWeek) : `${session.runWeek} (${session.weekday})`
		byText.set(text, (byText.get(text) ?? new Set()).add(week))
	}
	return [...byText].map(([text, weeks]) => `_Week ${[...weeks].join(', ')}_  \n${text}`).join('\n\n')
}
