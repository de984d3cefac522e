import { generalCaution } from './general-caution.ts'

/** Cautions of the lifter's own breakdowns, and the ones that hold for every page. */
export function Cautions({ cautions }: { cautions: readonly string[] }) {
	return (
		<footer class="cautions">
			{cautions.map(caution => (
				<p class="own" dir="auto" key={caution}>
					{caution}
				</p>
			))}
			<p>{generalCaution}</p>
		</footer>
	)
}
