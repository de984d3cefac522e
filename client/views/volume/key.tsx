import type { ComponentChildren } from 'preact'

export type Swatch =
	| 'volume'
	| 'stability'
	| 'drive'
	| 'intensity'
	| 'pale'
	| 'needed'
	| 'top'
	| 'lighter'
	| 'over'
	| 'zone-1'
	| 'zone-2'
	| 'zone-3'
	| 'zone-4'
	| 'passed'
	| 'planned'
	| 'open'
	| 'due'

/** What the marks of a chart mean. */
export function Key({ children }: { children: ComponentChildren }) {
	return <ul class="key">{children}</ul>
}

export function KeyEntry({ swatch, children }: { swatch: Swatch; children: ComponentChildren }) {
	return (
		<li>
			<i class={`swatch ${swatch}`} aria-hidden="true" />
			<span>{children}</span>
		</li>
	)
}
