import type { Unit } from '../../../language/model/quantities.ts'

/** The mass that is drawn at full height: the heaviest disc that most gyms have (common practice). */
const fullHeight: Readonly<Record<Unit, number>> = { kg: 25, lb: 45 }

const height = 22
const stroke = 4
const step = 6

/** One end of the bar with its discs, drawn as strokes on a line; the words beside it say the same. */
export function Discs({ perSide, unit }: { perSide: readonly string[]; unit: Unit }) {
	const width = perSide.length * step + 8
	return (
		<svg
			class="discs"
			width={width}
			height={height}
			viewBox={`0 0 ${width} ${height}`}
			preserveAspectRatio="xMinYMid"
			aria-hidden="true"
		>
			<rect x="0" y={height / 2 - 0.75} width={width} height="1.5" />
			{perSide.map((disc, index) => {
				// Area goes with mass, so the eye compares masses and not their squares.
				const share = Math.min(1, Math.sqrt(Number(disc) / fullHeight[unit]))
				const tall = Math.max(4, Math.round(height * share))
				return <rect key={index} x={3 + index * step} y={(height - tall) / 2} width={stroke} height={tall} rx="1" />
			})}
		</svg>
	)
}
