import { panelWords as words } from './words.ts'

/** Before the first answer. */
export function Waiting() {
	return <p class="state">{words.waiting}</p>
}

/** A folder without a plan: what to write to see something here. */
export function NoPlan() {
	return (
		<div class="state">
			<h1>{words.nothingYet}</h1>
			<p>{words.nothingYetHelp}</p>
			<pre>{'plan mara-autumn "Mara, autumn" for mara-lind\n  start 2026-10-05\n  run hinge-rebuild'}</pre>
		</div>
	)
}

/** Plans are there, but this file belongs to none of them. */
export function NothingChosen() {
	return (
		<div class="state">
			<h1>{words.which}</h1>
			<p>{words.whichHelp}</p>
		</div>
	)
}
