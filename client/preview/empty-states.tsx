/** Before the first answer. */
export function Waiting() {
	return <p class="state">Reading the plans…</p>
}

/** A folder without a plan: what to write to see something here. */
export function NoPlan() {
	return (
		<div class="state">
			<h1>No plan yet</h1>
			<p>A plan puts blocks on a calendar for one lifter. Write one like this, and its sheet appears here:</p>
			<pre>{'plan mara-autumn "Mara, autumn" for mara-lind\n  start 2026-10-05\n  run hinge-rebuild'}</pre>
		</div>
	)
}

/** Plans are there, but this file belongs to none of them. */
export function NothingChosen() {
	return (
		<div class="state">
			<h1>Which plan?</h1>
			<p>Pick one above, or open a file that a plan uses.</p>
		</div>
	)
}
