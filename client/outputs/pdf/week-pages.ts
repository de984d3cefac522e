import type { SheetItem, SheetSession, SheetSet } from '../../../language/reports/load-sheet.ts'
import { counted } from '../../views/counted.ts'
import { generalCaution } from '../../views/general-caution.ts'
import type { Reader } from '../../views/reader/reader.ts'
import { blockTitle, gymTitle, spokenName } from '../../views/reader/words.ts'
import { type FoldedSets, foldSets } from '../../views/sheet/fold.ts'
import type { SheetWeek } from '../../views/sheet/weeks.ts'
import { discsOf, effortOf, loadOf, percentOf, setsAndWork } from '../../views/sheet/wording.ts'
import type { SheetContent } from '../content.ts'
import { unknownLetter } from './faces.ts'
import type { Paper, SetText } from './paper.ts'
import type { Style } from './typesetting.ts'

const ink = '#000000'
const soft = '#444444'
const hairline = '#bbbbbb'
const accent = '#d2701a'

/** One scale: each step is a fifth larger than the one below. In points. */
const base = 8.6
export const styles = {
	title: { size: base * 1.44, weight: 'bold', colour: ink },
	session: { size: base * 1.2, weight: 'bold', colour: ink },
	plain: { size: base, weight: 'regular', colour: ink },
	strong: { size: base, weight: 'bold', colour: ink },
	small: { size: base / 1.2, weight: 'regular', colour: soft },
	caution: { size: base / 1.2, weight: 'bold', colour: ink },
} as const satisfies Record<string, Style>

/** 12 mm: what every printer can reach. */
const margin = 34
const gutter = 7
/** From the edge to a session's name, and to a movement's. */
const dayWidth = 116
const indent = 8
/** What is taller than this may be parted between two pages. */
const tallest = 260
/** Room for one result, in points. */
const box = { width: 27, height: 16, gap: 2.4, aLine: 4 }
/** A week that is a little too long is set smaller, down to this; a longer one takes another page. */
const smallest = 0.84
const steps = 5

/** In points; more than this is no foot of a page. */
const mostCautions = 150

/** What pages say beside the week. */
export interface Setting {
	readonly content: SheetContent
	readonly reader: Reader
	/** Of the plan. */
	readonly lastWeek: number
}

/** What stands on a page from one edge to the other. */
interface Stripe {
	readonly height: number
	draw(y: number): void
}

/** Stripes under each other, twice beside each other. */
interface Stacks {
	/** Of the taller one. */
	readonly height: number
	readonly left: readonly Stripe[]
	readonly right: readonly Stripe[]
}

interface Column {
	readonly title: string
	readonly width: number
}

/** One week of a plan on paper: a page, or several where one does not hold it. */
export class WeekPages {
	private readonly width: number

	constructor(
		private readonly paper: Paper,
		private readonly week: SheetWeek,
		private readonly setting: Setting,
	) {
		this.width = paper.width - 2 * margin
	}

	write(): void {
		this.paper.holdsUnknownLetters = false
		const head = this.head()
		const top = margin + head.height + 6
		let sessions: Stripe[][] = []
		let foot = this.foot()
		let room = 0
		for (let step = 0; step <= steps; step++) {
			const scale = 1 - ((1 - smallest) * step) / steps
			sessions = this.sessions(scale)
			foot = this.foot()
			room = this.paper.height - margin - foot.height - top
			if (heightOf(sessions.flat()) <= room) break
		}
		// One page is too little at any size: then better at full size on two.
		if (heightOf(sessions.flat()) > room) sessions = this.sessions(1)
		const cautions = this.cautions()
		this.flow(heightOf(cautions) > mostCautions ? [...sessions, cautions] : sessions, head, foot, room)
	}

	private flow(sessions: readonly (readonly Stripe[])[], head: Stripe, foot: Stripe, room: number): void {
		let page = 0
		let left = 0
		const begin = () => {
			page++
			this.paper.begin(page === 1 ? `Week ${this.week.week}` : undefined)
			head.draw(margin)
			if (page > 1) this.continued(page)
			foot.draw(this.paper.height - margin - foot.height)
			left = room
		}
		begin()
		for (const stripes of sessions) {
			const height = heightOf(stripes)
			// A session stays together where a page holds it.
			if (height > left && left < room && height <= room) begin()
			for (const stripe of stripes) {
				if (stripe.height > left && left < room) begin()
				stripe.draw(this.paper.height - margin - foot.height - left)
				left -= stripe.height
			}
		}
	}

	private continued(page: number): void {
		const text = this.paper.set(`continued, page ${page}`, styles.small, this.width)
		this.paper.write(text, margin, margin - text.height, this.width, 'end')
	}

	/** Whose sheet it is, which week, and where. */
	private head(): Stripe {
		const { paper, width, week } = this
		const { content, reader, lastWeek } = this.setting
		const right = 150
		const number = paper.set(`Week ${reader.number(week.week)} of ${reader.number(lastWeek)}`, styles.title, right)
		const dates = paper.set(reader.days(week.monday, week.sunday), styles.small, right)
		const lifter = content.lifterTitle === null ? null : paper.set(content.lifterTitle, styles.small, width - right - gutter, 1)
		const title = paper.set(content.title, styles.title, width - right - gutter, 2)
		const facts = paper.set(this.facts().join(' · '), styles.small, width, 3)
		const heads = Math.max((lifter?.height ?? 0) + title.height, number.height + dates.height)
		return {
			height: heads + facts.height + 6,
			draw: y => {
				if (lifter) paper.write(lifter, margin, y, width - right - gutter)
				paper.tell('H1', () => {
					paper.write(title, margin, y + (lifter?.height ?? 0), width - right - gutter)
					paper.write(number, margin + width - right, y, right, 'end')
				})
				paper.write(dates, margin + width - right, y + number.height, right, 'end')
				paper.write(facts, margin, y + heads + 1, width)
				paper.rule(margin, y + heads + facts.height + 4, width, ink, 1.4)
			},
		}
	}

	private facts(): string[] {
		const { content, reader } = this.setting
		const blocks = new Map(this.week.sessions.map(({ session }) => [`${session.block} ${session.week}`, session]))
		return [
			...[...blocks.values()].map(
				session => `week ${reader.number(session.week)} of ${blockTitle(content.titles, session.block)}`,
			),
			...(this.week.deload ? ['lighter week'] : []),
			...(this.gymsVary ? [] : this.gymOf(this.week.sessions[0]!.session)),
			`loads in ${content.sheet!.unit}`,
			...content.meets.map(meet => `${meet.title || 'Meet'} ${reader.days(meet.date, meet.date)}`),
		]
	}

	private get gymsVary(): boolean {
		return new Set(this.week.sessions.map(({ session }) => session.gym)).size > 1
	}

	private gymOf({ gym }: SheetSession): string[] {
		return gym === null ? [] : [gymTitle(this.setting.content.titles, gym)]
	}

	/** Cautions stand on every page: each is handed out by itself. So many that they leave no room stand at the end. */
	private foot(): Stripe {
		const { paper, width } = this
		const own = this.cautions()
		const general = [
			generalCaution,
			...(paper.holdsUnknownLetters ? [`${unknownLetter} stands for a letter that this file has no font for.`] : []),
		].map((text): Stripe => {
			const set = paper.set(text, styles.small, width)
			return { height: set.height, draw: y => paper.write(set, margin, y, width) }
		})
		const stripes = heightOf(own) > mostCautions ? general : [...own, ...general]
		return {
			height: heightOf(stripes) + 8,
			draw: y => {
				paper.rule(margin, y + 2, width, hairline, 0.7)
				let at = y + 5
				for (const stripe of stripes) {
					stripe.draw(at)
					at += stripe.height
				}
			},
		}
	}

	/** Of the lifter's own breakdowns, and of what the sheet is made of; line by line. */
	private cautions(): Stripe[] {
		const { paper, width } = this
		const { cautions, problems } = this.setting.content
		const errors = problems.filter(problem => problem.level === 'error').length
		const missing = `${counted.error(errors)} in the texts that this is made of: what is wrong there may be wrong or missing here.`
		return [...cautions, ...(errors === 0 ? [] : [missing])]
			.flatMap(text => paper.linesOf(paper.set(text, styles.caution, width - indent)))
			.map(line => ({
				height: line.height,
				draw: y => {
					paper.rule(margin, y, 2.5, accent, line.height)
					paper.write(line, margin + indent, y, width - indent)
				},
			}))
	}

	private sessions(scale: number): Stripe[][] {
		const table = new SessionTable(this.paper, this.week, this.setting, this.width, scale)
		return this.week.sessions.map(({ session }) => table.stripes(session, this.gymsVary ? this.gymOf(session) : []))
	}
}

/** The sessions of a week in one set of columns. */
class SessionTable {
	private readonly columns: Readonly<Record<'movement' | 'work' | 'load' | 'discs' | 'tempo' | 'rest' | 'done', Column>>

	constructor(
		private readonly paper: Paper,
		week: SheetWeek,
		private readonly setting: Setting,
		private readonly width: number,
		private readonly scale: number,
	) {
		const sets = week.sessions.flatMap(({ session }) => session.items.flatMap(item => item.sets))
		const fixed = {
			work: { title: 'Sets × reps', width: 62 },
			load: { title: 'Load', width: 62 },
			// A column that nothing stands in leaves its room to the movements.
			discs: { title: 'Discs a side', width: sets.some(set => set.perSide !== null) ? 88 : 0 },
			tempo: { title: 'Tempo', width: sets.some(set => set.tempo !== null) ? 44 : 0 },
			rest: { title: 'Rest', width: 40 },
			done: { title: 'Done', width: box.aLine * (box.width + box.gap) - box.gap },
		}
		const taken = Object.values(fixed).reduce((sum, column) => sum + column.width, 0)
		this.columns = { movement: { title: 'Movement', width: width - taken }, ...fixed }
	}

	/** A session from top to bottom. */
	stripes(session: SheetSession, gym: readonly string[]): Stripe[] {
		return [
			this.head(session, gym),
			...session.notes.flatMap(note => this.remark(note, dayWidth)),
			this.columnTitles(),
			...session.items.flatMap(item => this.item(item)),
			this.toWrite(),
		]
	}

	private style(name: keyof typeof styles): Style {
		return { ...styles[name], size: styles[name].size * this.scale }
	}

	private head(session: SheetSession, gym: readonly string[]): Stripe {
		const { paper, width, scale } = this
		const { reader } = this.setting
		const day = paper.set(`${reader.weekday(session.date)} ${reader.day(session.date)}`, this.style('session'), dayWidth)
		const name = paper.set(session.title ?? spokenName(session.session), this.style('session'), width - 240, 2)
		const facts = paper.set(
			[...(session.part === null ? [] : [session.part]), reader.duration(session.minutes * 60), ...gym].join(' · '),
			this.style('small'),
			122,
			2,
		)
		const gap = 7 * scale
		return {
			height: gap + Math.max(day.height, name.height, facts.height),
			draw: y => {
				paper.tell('H2', () => {
					paper.write(day, margin, y + gap, dayWidth)
					paper.write(name, margin + dayWidth, y + gap, width - 240)
				})
				paper.write(facts, margin + width - 122, y + gap + (day.style.size - facts.style.size), 122, 'end')
			},
		}
	}

	/** A text that may be long, line by line. */
	private remark(text: string, from: number): Stripe[] {
		const { paper, width } = this
		return paper.linesOf(paper.set(text, this.style('small'), width - from)).map(line => ({
			height: line.height,
			draw: y => paper.write(line, margin + from, y, width - from),
		}))
	}

	private columnTitles(): Stripe {
		const { paper, width } = this
		const titles = Object.values(this.columns).map(column => paper.set(column.title, this.style('small'), column.width))
		const { height } = titles[0]!
		return {
			height: height + 2,
			draw: y => {
				paper.tell('P', () => {
					let x = margin
					for (const [index, column] of Object.values(this.columns).entries()) {
						if (column.width > 0) paper.write(titles[index]!, x, y, column.width)
						x += column.width
					}
				})
				paper.rule(margin, y + height, width, hairline, 0.7)
			},
		}
	}

	/** A movement, with a line for sets that are alike: side by side, and under each other where that would be too tall. */
	private item(item: SheetItem): Stripe[] {
		const { paper, columns, scale } = this
		const width = columns.movement.width - indent - gutter
		const name = paper.set(nameOf(item), this.style(item.role === 'main' ? 'strong' : 'plain'), width, 4)
		const texts = [
			...(item.withItemAbove ? ['back to back with the one above'] : []),
			...(item.insteadOf === null ? [] : [`instead of ${item.insteadOf}`]),
			...item.milestones,
			...item.notes,
		]
		const remarks = texts.map(text => paper.set(text, this.style('small'), width))
		const lines = foldSets(item.sets).map(fold => this.setsLine(fold, item))
		const reasons = [...new Set(item.sets.flatMap(set => set.reason ?? []))].map(reason => this.reason(reason))
		const left = [name, ...remarks].map((text): Stripe => {
			return { height: text.height, draw: y => paper.write(text, margin + indent, y, width) }
		})
		const right = [...lines, ...reasons]
		const beside = { height: Math.max(heightOf(left), heightOf(right)), left, right }
		if (beside.height <= tallest) return [this.marked(beside, item)]
		const one = (stripe: Stripe) => this.marked({ height: stripe.height, left: [], right: [stripe] }, item)
		return [
			this.marked({ height: left[0]!.height, left: left.slice(0, 1), right: [] }, item),
			...texts.flatMap(text => this.remark(text, indent)),
			...right.map(one),
		].map(stripe => ({ ...stripe, height: stripe.height + scale }))
	}

	/** The stave before a movement says what it is in the session. */
	private marked({ height, left, right }: Stacks, { role }: SheetItem): Stripe {
		const pad = 2 * this.scale
		const strong = role === 'main' || role === 'test'
		return {
			height: height + 2 * pad,
			draw: y => {
				this.paper.rule(margin, y + pad, strong ? 3 : 1, strong ? ink : hairline, height)
				for (const stack of [left, right]) {
					let at = y + pad
					for (const stripe of stack) {
						stripe.draw(at)
						at += stripe.height
					}
				}
			},
		}
	}

	private reason(reason: string): Stripe {
		const { paper, columns } = this
		const width = this.width - columns.movement.width - columns.done.width - gutter
		const text = paper.set(reason, this.style('small'), width, 6)
		return { height: text.height, draw: y => paper.write(text, margin + columns.movement.width, y, width) }
	}

	private setsLine(fold: FoldedSets, item: SheetItem): Stripe {
		const { paper, scale } = this
		const { reader } = this.setting
		const { movement, work, load, discs, tempo, rest } = this.columns
		const { set } = fold
		const warmUp = item.role === 'warm-up'
		const each = set.eachSide ? ' each side' : ''
		const cells = [
			{ x: movement.width, column: work, text: setsAndWork(fold, reader) + each, style: 'plain' },
			{ x: movement.width + work.width, column: load, text: loadCell(set, item, reader), style: warmUp ? 'plain' : 'strong' },
			{
				x: movement.width + work.width + load.width,
				column: discs,
				text: discsOf(set, reader) ?? '',
				style: 'plain',
			},
			{ x: movement.width + work.width + load.width + discs.width, column: tempo, text: set.tempo ?? '', style: 'plain' },
			{
				x: movement.width + work.width + load.width + discs.width + tempo.width,
				column: rest,
				text: set.restSeconds === null || warmUp ? '' : reader.duration(set.restSeconds),
				style: 'plain',
			},
		] as const
		const texts: { x: number; width: number; text: SetText }[] = cells
			.filter(cell => cell.text !== '' && cell.column.width > 0)
			.map(cell => {
				const width = cell.column.width - gutter
				return { x: cell.x, width, text: paper.set(cell.text, this.style(cell.style), width) }
			})
		// Warm-ups are not written down.
		const boxes = warmUp ? 0 : fold.firm + fold.optional
		const rows = Math.ceil(boxes / box.aLine)
		const boxed = rows * (box.height * scale + box.gap)
		return {
			height: Math.max(...texts.map(({ text }) => text.height), boxed),
			draw: y => {
				paper.tell('P', () => {
					for (const { x, width, text } of texts) paper.write(text, margin + x, y, width)
				})
				const left = margin + this.width - this.columns.done.width
				for (let index = 0; index < boxes; index++) {
					const x = left + (index % box.aLine) * (box.width + box.gap)
					const at = y + 1 + Math.floor(index / box.aLine) * (box.height * scale + box.gap)
					paper.box(x, at, box.width, box.height * scale, soft)
				}
			},
		}
	}

	/** What is said after a session: how it felt, how long it took, and whatever else. */
	private toWrite(): Stripe {
		const { paper, width, scale } = this
		const blanks = [
			{ text: 'Felt, 0–10', width: 86 },
			{ text: 'Minutes', width: 86 },
			{ text: 'Remarks', width: width - 172 },
		].map(blank => ({ ...blank, text: paper.set(blank.text, this.style('small'), blank.width) }))
		const gap = 8 * scale
		const { height } = blanks[0]!.text
		return {
			height: gap + height + 3,
			draw: y => {
				let x = margin
				for (const blank of blanks) {
					paper.write(blank.text, x, y + gap, blank.width)
					paper.rule(x, y + gap + height, blank.width - gutter, soft, 0.7)
					x += blank.width
				}
			},
		}
	}
}

function heightOf(parts: readonly { readonly height: number }[]): number {
	return parts.reduce((sum, part) => sum + part.height, 0)
}

function nameOf(item: SheetItem): string {
	return item.role === 'main' || item.role === 'accessory' ? item.title : `${item.title} (${item.role})`
}

/** What is on the bar; where that cannot be known, what the text asks for. */
function loadCell(set: SheetSet, item: SheetItem, reader: Reader): string {
	const load = loadOf(set, item, reader)
	const effort = effortOf(set, reader)
	const each = item.hands > 1 ? ' each hand' : ''
	const words = load === null ? [percentOf(set, reader) ?? (set.reason === null ? null : '?')] : [`${load}${each}`]
	return [...words, effort].filter(word => word !== null).join(' ')
}
