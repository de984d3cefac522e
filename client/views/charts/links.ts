import type { Link } from '../../../language/model/vocabulary.ts'
import type { Reader } from '../reader/reader.ts'
import { links as inOrder, type Measure, type NeedMeasure, type WeekColumn } from '../volume/measures.ts'
import { type Drawing, ink } from './drawing.ts'
import { base, borderAxis, ceiling, heightAxis, needBars, needLine, weekAxis } from './parts.ts'

/** Stability beside drive, week by week, with what the breakdowns need of each. */
export function linksDrawing(links: Readonly<Record<Link, NeedMeasure>>, weeks: readonly WeekColumn[], reader: Reader): Drawing {
	return surface => {
		const plot = Math.round(surface.fontSize * 11)
		const measures = inOrder.map(link => links[link])
		const slot = surface.width / weeks.length
		return {
			height: plot + Math.round(surface.fontSize * 2.2),
			option: {
				...base(surface),
				grid: [{ id: 'links', left: 0, right: 0, top: 0, height: plot, outerBoundsMode: 'none' }],
				xAxis: [weekAxis(0, weeks, surface, true), borderAxis(0, weeks)],
				yAxis: [heightAxis(0, { max: ceiling(measures) * 1.15 })],
				series: [
					...inOrder.flatMap(link =>
						needBars(links[link], { grid: 0, axis: 0, color: ink[link], slot, surface, reader, abreast: 2 }),
					),
					...inOrder.flatMap(link => needLine(links[link], 0, 1, ink[link])),
				],
			},
		}
	}
}

/** The same for seconds under tension, of which no breakdown needs a number. */
export function linkSecondsDrawing(
	links: Readonly<Record<Link, Measure>>,
	weeks: readonly WeekColumn[],
	reader: Reader,
): Drawing {
	const plain = (link: Link): NeedMeasure => ({ name: links[link].name, all: links[link], need: null })
	return linksDrawing({ stability: plain('stability'), drive: plain('drive') }, weeks, reader)
}
