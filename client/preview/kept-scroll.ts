import { useEffect, useLayoutEffect, useRef } from 'preact/hooks'
import type { Subject } from '../../language/reports/preview.ts'
import type { Editor } from './editor.ts'
import type { ScrollPlace } from './messages.ts'

/** Keeps over a reload what is read, and takes it up again once there is something to scroll. */
export function useKeptScroll(editor: Editor, held: { readonly current: Subject | null }, filled: boolean): void {
	const restored = useRef(false)
	useLayoutEffect(() => {
		if (!filled || restored.current) return
		restored.current = true
		if (editor.kept?.scroll) scrollTo(editor.kept.scroll)
	}, [editor, filled])
	useEffect(() => {
		let waiting: number | undefined
		const keep = () => {
			waiting ??= window.setTimeout(() => {
				waiting = undefined
				editor.keep({ held: held.current, scroll: scrollPlace() })
			}, 200)
		}
		window.addEventListener('scroll', keep, { passive: true })
		return () => {
			window.clearTimeout(waiting)
			window.removeEventListener('scroll', keep)
		}
	}, [editor, held])
}

/** Something else is read from its beginning; the same thing, however it has changed, from where it was. */
export function useScrollOfSubject(chosen: Subject | null): void {
	const before = useRef<string | null>(null)
	const now = chosen === null ? null : `${chosen.kind} ${chosen.name}`
	useLayoutEffect(() => {
		if (now === null) return
		if (before.current !== null && before.current !== now) window.scrollTo(0, 0)
		before.current = now
	}, [now])
}

/** The last section that begins above the middle of the window. */
function scrollPlace(): ScrollPlace | null {
	let place: ScrollPlace | null = null
	for (const section of document.querySelectorAll('section[id]')) {
		const { top } = section.getBoundingClientRect()
		if (top > window.innerHeight / 2) break
		place = { section: section.id, top }
	}
	return window.scrollY === 0 ? null : place
}

function scrollTo({ section, top }: ScrollPlace): void {
	const now = document.getElementById(section)?.getBoundingClientRect().top
	if (now !== undefined) window.scrollBy(0, now - top)
}
