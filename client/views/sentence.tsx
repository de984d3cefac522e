/**
 * A sentence of the language itself: in English whatever the interface speaks, so from left to right also where it begins with a name of
 * another script. Its own words stand between backticks.
 */
export function Sentence({ text }: { text: string }) {
	const parts = text.split('`')
	// An odd one out is somebody's own.
	const hasWords = parts.length % 2 === 1
	return (
		<span lang="en" dir="ltr">
			{hasWords ? parts.map((part, index) => (index % 2 === 1 ? <code key={index}>{part}</code> : part)) : text}
		</span>
	)
}
