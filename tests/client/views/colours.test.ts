// The colours of series: seen on their paper, and told apart with every kind of colour vision.
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'

type Rgb = readonly [number, number, number]

const read = (file: string) => readFileSync(path.resolve(import.meta.dirname, '../../../client', file), 'utf8')
const page = read('views/style/colours.css')
const panel = read('preview/preview.css')

/** The custom properties of the block of a style sheet that begins with these words; what it does not say, an earlier one does. */
function colours(css: string, ...beginnings: readonly string[]): (name: string) => Rgb {
	const found = new Map<string, string>()
	for (const beginning of beginnings) {
		const start = css.indexOf(beginning)
		if (start < 0) throw new Error(`no "${beginning}"`)
		for (const [, name, value] of css.slice(start, css.indexOf('}', start)).matchAll(/--([\w-]+): (#[0-9a-f]{3,6});/g))
			found.set(name!, value!)
	}
	return name => {
		const hex = found.get(name)
		if (hex === undefined) throw new Error(`no colour "${name}"`)
		const full = hex.length === 4 ? hex.replaceAll(/[0-9a-f]/g, '$&$&') : hex
		return [1, 3, 5].map(at => linear(Number.parseInt(full.slice(at, at + 2), 16) / 255)) as unknown as Rgb
	}
}

const linear = (value: number) => (value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4)

/** Contrast ratio. Source: WCAG 2.2, relative luminance. */
function contrast(a: Rgb, b: Rgb): number {
	const luminance = ([r, g, blue]: Rgb) => 0.2126 * r + 0.7152 * g + 0.0722 * blue
	const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y) as [number, number]
	return (high + 0.05) / (low + 0.05)
}

/**
 * How a colour looks without one kind of cone, in linear light. Source of the matrices: Machado, Oliveira, Fernandes 2009, IEEE Trans Vis
 * Comput Graph 15(6):1291-1298, severity 1.0 (from memory).
 */
const visions = {
	usual: [
		[1, 0, 0],
		[0, 1, 0],
		[0, 0, 1],
	],
	'without red cones': [
		[0.152286, 1.052583, -0.204868],
		[0.114503, 0.786281, 0.099216],
		[-0.003882, -0.048116, 1.051998],
	],
	'without green cones': [
		[0.367322, 0.860646, -0.227968],
		[0.280085, 0.672501, 0.047413],
		[-0.01182, 0.04294, 0.968881],
	],
	'without blue cones': [
		[1.255528, -0.076749, -0.178779],
		[-0.078411, 0.930809, 0.147602],
		[0.004733, 0.691367, 0.3039],
	],
	'without colours': [
		[0.2126, 0.7152, 0.0722],
		[0.2126, 0.7152, 0.0722],
		[0.2126, 0.7152, 0.0722],
	],
} as const

function seenWith(vision: keyof typeof visions, colour: Rgb): Rgb {
	const rows = visions[vision].map(row => row.reduce<number>((sum, share, index) => sum + share * colour[index]!, 0))
	return rows.map(value => Math.min(1, Math.max(0, value))) as unknown as Rgb
}

/** Distance in Oklab, in which 0.02 is about the least that is noticed. Source: Ottosson 2020, "A perceptual color space for image processing" (from memory). */
function distance(a: Rgb, b: Rgb): number {
	const [one, other] = [oklab(a), oklab(b)]
	return Math.hypot(...one.map((value, index) => value - other[index]!))
}

function oklab([r, g, b]: Rgb): readonly number[] {
	const [l, m, s] = [
		0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b,
		0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b,
		0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b,
	].map(Math.cbrt) as [number, number, number]
	return [
		0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s,
		1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s,
		0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s,
	]
}

/** Papers of the editor's own themes, as a workbench shows them. */
const papers = { light: '#ffffff', dark: '#1f1f1f', 'high contrast': '#000000' }
const paper = (hex: string) => colours(`x { --paper: ${hex}; }`, 'x')('paper')

const lists: Record<string, { paper: Rgb; of: (name: string) => Rgb }> = {
	'a light page': { paper: colours(page, ':root {')('paper'), of: colours(page, ':root {') },
	'a dark page': {
		paper: colours(page, '@media (prefers-color-scheme: dark)')('paper'),
		of: colours(page, ':root {', '@media (prefers-color-scheme: dark)'),
	},
	paper: { paper: colours(page, '@media print')('paper'), of: colours(page, ':root {', '@media print') },
	'the panel, light': { paper: paper(papers.light), of: colours(panel, ':root {') },
	'the panel, dark': { paper: paper(papers.dark), of: colours(panel, ':root {', 'body.vscode-dark') },
	'the panel, high contrast': { paper: paper(papers['high contrast']), of: colours(panel, ':root {', 'body.vscode-dark') },
	'the panel, high contrast light': {
		paper: paper(papers.light),
		of: colours(panel, ':root {', 'body.vscode-high-contrast-light {'),
	},
}

const links = ['stability', 'drive'] as const
const zones = ['zone-1', 'zone-2', 'zone-3', 'zone-4'] as const

describe.each(Object.entries(lists))('on %s', (_, { paper: ground, of }) => {
	// 3 : 1 is what WCAG 2.2 asks of graphics (1.4.11).
	it.each([...links, ...zones])('%s stands out from the paper', name =>
		expect(contrast(of(name), ground)).toBeGreaterThanOrEqual(3),
	)

	it.each(Object.keys(visions) as (keyof typeof visions)[])('series stay apart, seen %s', vision => {
		const apart = (a: string, b: string) => distance(seenWith(vision, of(a)), seenWith(vision, of(b)))
		expect(apart('stability', 'drive')).toBeGreaterThan(0.08)
		for (const [index, zone] of zones.slice(1).entries()) expect(apart(zone, zones[index]!)).toBeGreaterThan(0.08)
	})
})
