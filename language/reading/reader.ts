import { type AstNode, CstUtils, GrammarUtils, type Reference as TreeReference } from 'langium'
import { addDays, isRealDate } from '../compute/calendar.ts'
import { compare, exact, zero } from '../compute/exact.ts'
import type * as tree from '../grammar/generated/ast.ts'
import type { Allow, DefinitionKind } from '../model/definitions.ts'
import type { CalendarDate, CountRange, Exact, ExactRange, Mass, Weekday } from '../model/quantities.ts'
import { weekdays } from '../model/quantities.ts'
import type { Correction, Fault, FaultCode, Reference } from '../model/reading.ts'
import type { Fact, Name, QuotedText, Span } from '../model/text.ts'
import { nearest } from '../names/nearest.ts'
import { ourName, ourNumber, titleOfName } from '../parser/tokens.ts'
import { reservedWords } from '../parser/words.ts'
import { monthOf } from '../spelling/months.ts'
import { weekdayOf } from '../spelling/weekdays.ts'

type TextProperty<N> = Extract<keyof N, string>

/** More than this many times its own best nobody lifts: a percent above it is a slip. */
const highestPercent = exact(150)

/** More than this many times their own bodyweight nobody lifts or carries (common practice). */
const mostBodyweights = exact(6)

/**
 * Reads the parts that all definitions share out of one definition's tree, and gathers what is wrong with them. A tree that was repaired
 * may lack any part: whatever is missing is read as absent, since the parser has already said so.
 */
export class Reader {
	readonly faults: Fault[] = []
	readonly references: Reference[] = []
	readonly notes: QuotedText[] = []
	readonly allows: Allow[] = []
	private source: QuotedText | undefined
	private readonly stated = new Map<string, Span>()

	// Places --------------------------------------------------------------------------------------------------------------------------

	span(node: AstNode): Span {
		const place = node.$cstNode
		return place ? { start: place.offset, end: place.end } : { start: 0, end: 0 }
	}

	spanOf<N extends AstNode>(node: N, property: TextProperty<N>, index?: number): Span {
		const place = node.$cstNode && GrammarUtils.findNodeForProperty(node.$cstNode, property, index)
		return place ? { start: place.offset, end: place.end } : this.span(node)
	}

	/** A number with the word after it: "2 times". */
	wordAfter<N extends AstNode>(node: N, property: TextProperty<N>): Span {
		const place = node.$cstNode && GrammarUtils.findNodeForProperty(node.$cstNode, property)
		const next = place && CstUtils.getNextNode(place, false)
		const own = this.spanOf(node, property)
		return next ? { start: own.start, end: next.end } : own
	}

	// Faults --------------------------------------------------------------------------------------------------------------------------

	fault(code: FaultCode, span: Span, message: string, corrections: readonly Correction[] = []): void {
		this.faults.push({ code, span, message, corrections })
	}

	/** True where a fact that may stand once is stated for the first time; the second one is reported and left unread. */
	first(fact: string, node: AstNode): boolean {
		const span = this.span(node)
		if (!this.stated.has(fact)) {
			this.stated.set(fact, span)
			return true
		}
		const remove: Correction = { title: 'Remove this line', edits: [{ span, text: '' }] }
		this.fault('stated-twice', span, `"${fact}" is stated twice here; the first one counts. Keep one of them.`, [remove])
		return false
	}

	/** A second clause of a kind behind the same sets; the first counts. */
	statedTwice(what: string, clause: AstNode): void {
		const span = this.span(clause)
		const correction = { title: 'Remove the second one', edits: [{ span, text: '' }] }
		this.fault('stated-twice', span, `${what} is stated twice for these sets. Keep one.`, [correction])
	}

	// Names and texts -----------------------------------------------------------------------------------------------------------------

	/** A name that another definition of that kind gives. */
	reference<N extends AstNode>(node: N, property: TextProperty<N>, kind: DefinitionKind, index?: number): Name {
		const value = (node as unknown as Record<string, TreeReference | TreeReference[] | undefined>)[property]
		const reference = Array.isArray(value) ? value[index ?? 0] : value
		return this.referTo(reference?.$refText, this.spanOf(node, property, index), { kind })
	}

	/** A name that a lifter or a team gives. */
	lifterOrTeam<N extends AstNode>(node: N, property: TextProperty<N>): Name {
		const reference = (node as unknown as Record<string, TreeReference | undefined>)[property]
		return this.referTo(reference?.$refText, this.spanOf(node, property), { kind: 'lifter', orKind: 'team' })
	}

	referencesIn<N extends AstNode>(node: N, property: TextProperty<N>, kind: DefinitionKind): Name[] {
		const values = (node as unknown as Record<string, unknown[] | undefined>)[property] ?? []
		return values.map((_, index) => this.reference(node, property, kind, index))
	}

	private referTo(text: string | undefined, span: Span, kinds: Pick<Reference, 'kind' | 'orKind'>): Name {
		// A reserved word in a name's place is the parser's to report; nothing is looked up for it.
		if (text && !reservedWords.has(text)) this.references.push({ ...kinds, name: text, span })
		return { text: text ?? '', span }
	}

	name<N extends AstNode>(node: N, property: TextProperty<N>, index?: number): Name {
		const value = (node as unknown as Record<string, string | string[] | undefined>)[property]
		const text = Array.isArray(value) ? value[index ?? 0] : value
		return { text: text ?? '', span: this.spanOf(node, property, index) }
	}

	text<N extends AstNode>(node: N, property: TextProperty<N>): QuotedText | undefined {
		const value = (node as unknown as Record<string, string | undefined>)[property]
		return value === undefined ? undefined : { text: value, span: this.spanOf(node, property) }
	}

	/** The title after a name; a name that people would not write so (`Heavy_Pull`) is one itself. */
	title<N extends AstNode>(node: N, name: TextProperty<N>, title: TextProperty<N>): QuotedText | undefined {
		const written = this.text(node, title)
		const place = node.$cstNode && GrammarUtils.findNodeForProperty(node.$cstNode, name)
		if (written || !place || ourName(place.text) === place.text || ourName(place.text) === '') return written
		return { text: titleOfName(place.text), span: this.spanOf(node, name) }
	}

	/** One word of a closed list; another word is reported with the nearest. */
	word<W extends string, N extends AstNode>(
		node: N,
		property: TextProperty<N>,
		list: readonly W[],
		what: string,
		index?: number,
	): W | undefined {
		const { text, span } = this.name(node, property, index)
		if (text === '') return undefined
		if ((list as readonly string[]).includes(text)) return text as W
		const near = nearest(text, list)
		const end = near ? `Did you mean "${near}"?` : `It is one of: ${list.join(', ')}.`
		const corrections = near ? [{ title: `Write "${near}"`, edits: [{ span, text: near }] }] : []
		this.fault('unknown-name', span, `"${text}" is not ${what}. ${end}`, corrections)
		return near as W | undefined
	}

	words<W extends string, N extends AstNode>(node: N, property: TextProperty<N>, list: readonly W[], what: string): W[] {
		const values = (node as unknown as Record<string, string[] | undefined>)[property] ?? []
		return values.map((_, index) => this.word(node, property, list, what, index)).filter(word => word !== undefined)
	}

	/** A day of the week; its short form is reported with the spellings. */
	weekday<N extends AstNode>(node: N, property: TextProperty<N>, index?: number): Weekday | undefined {
		return weekdayOf(this.name(node, property, index).text) ?? this.word(node, property, weekdays, 'a day of the week', index)
	}

	weekdays<N extends AstNode>(node: N, property: TextProperty<N>): Weekday[] {
		const values = (node as unknown as Record<string, string[] | undefined>)[property] ?? []
		return values.map((_, index) => this.weekday(node, property, index)).filter(day => day !== undefined)
	}

	/** `source`, `note`, `allow`: true where the line was one of them. */
	common(line: AstNode, scope: Span, notes: QuotedText[] = this.notes, member?: string): boolean {
		switch (line.$type) {
			case 'SourceLine':
				if (this.first('source', line)) this.source = this.text(line as tree.SourceLine, 'text')
				return true
			case 'NoteLine': {
				const note = this.text(line as tree.NoteLine, 'text')
				if (note) notes.push(note)
				return true
			}
			case 'AllowLine':
				this.allow(line as tree.AllowLine, scope, member)
				return true
			default:
				return false
		}
	}

	private allow(line: tree.AllowLine, scope: Span, member: string | undefined): void {
		const rule = this.name(line, 'rule')
		const because = this.text(line, 'reason')
		if (!because || because.text.trim() === '') {
			const message = `An exception needs its reason: allow ${rule.text} because "…".`
			this.fault('syntax', this.span(line), message)
		}
		const allow = { rule, because, span: this.span(line), scope }
		this.allows.push(member === undefined ? allow : { ...allow, member })
	}

	// Numbers -------------------------------------------------------------------------------------------------------------------------

	exact(text: string | undefined): Exact | undefined {
		return text !== undefined && /^\d+(\.\d+)?$/.test(text) ? exact(text) : undefined
	}

	/** A whole number of at least `least`; another one is reported, and read as absent. */
	count<N extends AstNode>(node: N, property: TextProperty<N>, what: string, least = 1): number | undefined {
		const text = (node as unknown as Record<string, string | undefined>)[property]
		if (text === undefined) return undefined
		const value = Number(text)
		if (!Number.isInteger(value)) {
			this.fault('bad-number', this.spanOf(node, property), `${what} come in whole numbers, not ${text}.`)
			return undefined
		}
		if (value < least) {
			this.fault('bad-number', this.spanOf(node, property), `${what} cannot be ${text}; ${least} is the least.`)
			return undefined
		}
		return value
	}

	countRange(node: tree.Range | undefined, what: string, least = 1): CountRange | undefined {
		if (!node) return undefined
		const from = this.count(node, 'from', what, least)
		const to = node.to === undefined ? from : this.count(node, 'to', what, least)
		if (from === undefined || to === undefined) return undefined
		return this.inOrder(node, from, to) ? { from, to } : { from: to, to: from }
	}

	exactRange(node: { from?: string; to?: string } & AstNode): ExactRange | undefined {
		const from = this.exact(node.from)
		const to = node.to === undefined ? from : this.exact(node.to)
		if (!from || !to) return undefined
		return this.inOrder(node, from, to) ? { from, to } : { from: to, to: from }
	}

	private inOrder(node: AstNode & { from?: string; to?: string }, from: Exact | number, to: Exact | number): boolean {
		const upsideDown = typeof from === 'number' ? from > (to as number) : compare(from, to as Exact) > 0
		if (!upsideDown) return true
		const first = this.spanOf(node, 'from' as never)
		const second = this.spanOf(node, 'to' as never)
		const edits = [
			{ span: first, text: node.to! },
			{ span: second, text: node.from! },
		]
		const message = `The range ${node.from}-${node.to} is upside down: the smaller number stands first.`
		this.fault('bad-number', { start: first.start, end: second.end }, message, [
			{ title: `Write ${node.to}-${node.from}`, edits },
		])
		return false
	}

	/** A percent from 0 to 150. */
	percent<N extends AstNode>(node: N, property: TextProperty<N>): Exact | undefined {
		const value = this.exact((node as unknown as Record<string, string | undefined>)[property])
		if (value && compare(value, highestPercent) > 0) this.percentTooHigh(this.spanOf(node, property), value)
		return value
	}

	percentRange(node: AstNode & { from?: string; to?: string }): ExactRange | undefined {
		const range = this.exactRange(node)
		if (range && compare(range.to, highestPercent) > 0) this.percentTooHigh(this.span(node), range.to)
		return range
	}

	/** So much of the bodyweight is more than nothing, and what people lift. `whole` is all of it: 1 in times, 100 in percent. */
	checkBodyweights(value: Exact, whole: Exact, span: Span): void {
		const most = whole.mul(mostBodyweights)
		const asText = (amount: Exact) =>
			whole.equals(1) ? `${amount.toString()} x bodyweight` : `${amount.toString()}% of bodyweight`
		if (value.equals(0)) this.fault('bad-number', span, `${asText(value)} is no load.`)
		if (compare(value, most) > 0)
			this.fault('bad-number', span, `${asText(value)} is more than anyone lifts; ${asText(most)} is the most.`)
	}

	private percentTooHigh(span: Span, value: Exact): void {
		this.fault('bad-number', span, `${value.toString()}% is more than anyone lifts; a percent goes up to 150.`)
	}

	mass(node: tree.Mass | undefined): Mass | undefined {
		const amount = this.exact(node?.amount)
		if (!node || !amount) return undefined
		if (node.unit === undefined) this.missingUnit(this.span(node), node.amount, ['kg', 'lb'])
		return { amount, unit: node.unit ?? 'kg' }
	}

	/** A list of masses; those that lack their unit are reported together, and read in the unit of the others. */
	masses(nodes: readonly (tree.Mass | undefined)[]): (Mass | undefined)[] {
		const bare = nodes.filter(node => node !== undefined && node.amount !== undefined && node.unit === undefined) as tree.Mass[]
		const unit = nodes.find(node => node?.unit !== undefined)?.unit ?? 'kg'
		if (bare.length < 2) return nodes.map(node => this.mass(node))
		const amounts = bare.map(node => ourNumber(node.amount))
		const corrections = [unit, unit === 'kg' ? 'lb' : 'kg'].map(one => ({
			title: `Write ${one} behind each`,
			edits: bare.map((node, index) => ({ span: this.span(node), text: withUnit(amounts[index]!, one) })),
		}))
		const span = { start: this.span(bare[0]!).start, end: this.span(bare[bare.length - 1]!).end }
		const message = `Each mass has its unit: ${amounts.map(amount => withUnit(amount, unit)).join(', ')}.`
		this.fault('bad-number', span, message, corrections)
		return nodes.map(node => (node && bare.includes(node) ? this.massIn(node, unit) : this.mass(node)))
	}

	private massIn(node: tree.Mass, unit: Mass['unit']): Mass | undefined {
		const amount = this.exact(node.amount)
		return amount && { amount, unit }
	}

	/** @param written The number as it is written; a decimal comma in it is put right with the unit. */
	missingUnit(span: Span, written: string, units: readonly string[]): void {
		const text = ourNumber(written)
		const corrections = units.map(unit => ({
			title: `Write ${withUnit(text, unit)}`,
			edits: [{ span, text: withUnit(text, unit) }],
		}))
		const choices = units.map(unit => withUnit(text, unit)).join(' or ')
		this.fault('bad-number', span, `${text} has no unit. Write ${choices}.`, corrections)
	}

	/** Seconds. */
	seconds(node: tree.Time | undefined): Exact | undefined {
		const amount = this.exact(node?.amount)
		if (!node || !amount) return undefined
		if (node.unit === undefined) this.missingUnit(this.span(node), node.amount, ['s', 'min'])
		if (node.unit !== 'min') return amount
		return amount.mul(60).add(this.exact(node.seconds) ?? zero)
	}

	/** A real calendar date, or `undefined`; what is no date is reported. */
	date<N extends AstNode>(node: N, property: TextProperty<N>): CalendarDate | undefined {
		const text = (node as unknown as Record<string, string | undefined>)[property]
		// Dates in another order are reported where the spellings are looked at, and read as what they most likely are.
		const iso = text === undefined ? undefined : (likelyDates(text)[0] ?? text)
		if (iso === undefined) return undefined
		if (isRealDate(iso)) return iso
		const message = `${text} is not in the calendar. A date is written as year, month, day: 2026-10-05.`
		if (!/^\d{4}-\d{2}-\d{2}$/.test(text!)) return undefined
		const span = this.spanOf(node, property)
		const corrections = datesAround(iso).map(date => ({ title: `Write ${date}`, edits: [{ span, text: date }] }))
		this.fault('bad-date', span, message, corrections)
		return undefined
	}

	/** `from … until …` in any order; an end before its start is reported. */
	bounds(spans: readonly tree.DateBound[] | undefined): { from: CalendarDate | undefined; until: CalendarDate | undefined } {
		let from: CalendarDate | undefined
		let until: CalendarDate | undefined
		for (const bound of spans ?? []) {
			const date = this.date(bound, 'date')
			if (bound.side === 'from') from = date
			else until = date
		}
		const last = spans?.[spans.length - 1]
		if (from && until && until < from && last) this.endBeforeStart(this.span(last), from, until)
		return { from, until }
	}

	endBeforeStart(span: Span, from: CalendarDate, to: CalendarDate): void {
		this.fault('bad-date', span, `The end, ${to}, is before the start, ${from}.`)
	}

	// The frame of a definition -------------------------------------------------------------------------------------------------------

	/** Keyword, name, title and what every kind of definition has. Call it last: it takes what has been gathered. */
	frame(node: tree.Definition, faults: readonly Fault[]) {
		const span = this.span(node)
		const name = node.$type === 'Log' ? this.name(node, 'lifter') : this.name(node, 'name')
		const logged = node.$type === 'Log' ? (node.lifter?.$refText ?? '') : name.text
		const title = node.$type === 'Log' ? undefined : this.title(node as tree.Block, 'name', 'title')
		const headerEnd = title?.span.end ?? name.span.end
		return {
			name: { text: logged, span: name.span },
			title,
			span,
			header: { start: span.start, end: Math.max(headerEnd, span.start + 1) },
			source: this.source,
			notes: this.notes,
			allows: this.allows,
			faults: [...faults, ...this.faults].sort((a, b) => a.span.start - b.span.start),
			references: [...this.references].sort((a, b) => a.span.start - b.span.start),
		}
	}
}

/** A value and its line. */
export function fact<T>(value: T | undefined, span: Span): Fact<T> | undefined {
	return value === undefined ? undefined : { value, span }
}

function withUnit(text: string, unit: string): string {
	return unit === '%' ? `${text}%` : `${text} ${unit}`
}

/** For a day that its month is too short for: the last of that month and the first of the next. */
function datesAround(text: string): CalendarDate[] {
	const last = [1, 2, 3].map(days => `${text.slice(0, 8)}${Number(text.slice(8)) - days}`).find(isRealDate)
	return last && /(29|30|31)$/.test(text) ? [last, addDays(last, 1)] : []
}

/**
 * What a date in another order most likely is, the likeliest first: the year where four digits stand, day before month where a dot
 * separates them, both readings where a slash does. Empty for a date in our own form.
 */
export function likelyDates(text: string): CalendarDate[] {
	const inWords = dateInWords(text)
	if (inWords) return [inWords].filter(isRealDate)
	const [first, second, third] = text.split(/[-./]/)
	if (!first || !second || !third || /^\d{4}-\d{2}-\d{2}$/.test(text)) return []
	const iso = (year: string, month: string, day: string) =>
		`${year.padStart(4, '20')}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`
	if (first.length === 4) return [iso(first, second, third)].filter(isRealDate)
	const dayFirst = iso(third, second, first)
	const monthFirst = iso(third, first, second)
	return (text.includes('.') ? [dayFirst] : [...new Set([dayFirst, monthFirst])]).filter(isRealDate)
}

/** `5 Oct 2026`, `October 5th, 2026` */
function dateInWords(text: string): CalendarDate | undefined {
	const name = /[a-z]{3,}/i.exec(text)?.[0].toLowerCase()
	const month = name && monthOf(name)
	const [day, year] = text.match(/\d+/g) ?? []
	if (!month || !day || !year) return undefined
	return `${year}-${String(month).padStart(2, '0')}-${day.padStart(2, '0')}`
}
