import { Component, type ComponentChildren, type FunctionComponent, h } from 'preact'
import { useRef } from 'preact/hooks'

/**
 * The new value, with every part that says the same as before being the very same object: so that what is drawn from an unchanged part
 * can be left as it is.
 */
export function withUnchanged<T>(before: unknown, next: T): T {
	if (Object.is(before, next)) return next
	if (Array.isArray(before) && Array.isArray(next)) {
		const merged = next.map((value, index) => withUnchanged(before[index], value))
		const isSame = before.length === merged.length && merged.every((value, index) => Object.is(value, before[index]))
		return (isSame ? before : merged) as T
	}
	if (isPlain(before) && isPlain(next)) {
		const names = Object.keys(next)
		const merged = Object.fromEntries(names.map(name => [name, withUnchanged(before[name], next[name])]))
		const isSame = names.length === Object.keys(before).length && names.every(name => Object.is(merged[name], before[name]))
		return (isSame ? before : merged) as T
	}
	return next
}

function isPlain(value: unknown): value is Record<string, unknown> {
	return typeof value === 'object' && value !== null && !Array.isArray(value)
}

/** A value that is worked out anew each time; where it says the same as the last one, that one. */
export function useUnchanged<T>(value: T): T {
	const last = useRef(value)
	last.current = withUnchanged(last.current, value)
	return last.current
}

/** A component that is drawn again only when one of its props is another. What it reads from a context reaches it all the same. */
export function unlessChanged<P extends object>(inner: FunctionComponent<P>): FunctionComponent<P> {
	class Unchanged extends Component<P> {
		override shouldComponentUpdate(next: P): boolean {
			const before = this.props as Readonly<Record<string, unknown>>
			const after = next as Readonly<Record<string, unknown>>
			const names = new Set([...Object.keys(before), ...Object.keys(after)])
			return [...names].some(name => name !== 'children' && !Object.is(before[name], after[name]))
		}

		override render(): ComponentChildren {
			return h(inner, this.props as P)
		}
	}
	return Unchanged as unknown as FunctionComponent<P>
}
