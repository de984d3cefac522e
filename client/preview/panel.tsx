import { useCallback, useEffect, useMemo, useRef, useState } from 'preact/hooks'
import type { Place, Subject } from '../../language/reports/preview.ts'
import { SurfaceContext } from '../views/charts/surface.ts'
import { LogView } from '../views/log/log-view.tsx'
import { PictureView } from '../views/picture-view.tsx'
import { ReaderContext } from '../views/reader/context.ts'
import { readerOf } from '../views/reader/reader.ts'
import { Sentence } from '../views/sentence.tsx'
import { TeamView } from '../views/team/team-view.tsx'
import { TextLinksContext } from '../views/text-links.ts'
import { useUnchanged, withUnchanged } from '../views/unchanged.ts'
import type { Editor } from './editor.ts'
import { NoPlan, NothingChosen, Waiting } from './empty-states.tsx'
import { keepLastGood, type Shown } from './keep-last-good.ts'
import { useKeptScroll, useScrollOfSubject } from './kept-scroll.ts'
import { litPlaces } from './lit-places.ts'
import { LiveSurface } from './live-surface.tsx'
import { type Cursor, cursor, hold, holding, ready, reveal, show, silence } from './messages.ts'
import { SubjectPicker } from './subject-picker.tsx'
import { panelWords as words } from './words.ts'

/** The preview panel: a picker above what is shown, kept up to date by what the extension sends. */
export function Panel({ editor }: { editor: Editor }) {
	const reader = useMemo(() => readerOf(navigator.language), [])
	const [shown, setShown] = useState<Shown | null>(null)
	const [trouble, setTrouble] = useState<string | null>(null)
	const [at, setAt] = useState<Cursor | null>(null)
	const [held, setHeld] = useState<Subject | null>(editor.kept?.held ?? null)
	const heldNow = useRef(held)

	useEffect(() => {
		editor.on(show, data => {
			setTrouble(null)
			setShown(last => withUnchanged(last, keepLastGood(last, data)))
		})
		editor.on(holding, message => {
			if (sameSubject(message.held, heldNow.current)) return
			heldNow.current = message.held
			setHeld(message.held)
			editor.keep({ held: message.held, scroll: null })
		})
		editor.on(cursor, message => setAt(message.at))
		editor.on(silence, ({ message }) => setTrouble(message))
		editor.start()
		editor.send(ready, { held: heldNow.current })
	}, [editor])

	useKeptScroll(editor, heldNow, shown !== null)
	useScrollOfSubject(shown?.data.chosen ?? null)

	const data = shown?.data ?? null
	const go = useCallback((place: Place) => editor.send(reveal, place), [editor])
	// Every line of the sheet hangs on the links: they are others only when something else is lit, not with each place that moves.
	const places = useRef<readonly Place[]>([])
	places.current = data?.picture?.written?.places ?? []
	const lit = useUnchanged(litPlaces(places.current, at))
	const links = useMemo(
		() => ({
			go(index: number) {
				const place = places.current[index]
				if (place) go(place)
			},
			lit,
		}),
		[go, lit],
	)

	useRowClicks(links.go)

	const pick = (subject: Subject | null) => {
		heldNow.current = subject
		setHeld(subject)
		editor.keep({ held: subject, scroll: null })
		editor.send(hold, { held: subject })
	}

	const stale = trouble === null ? (shown?.staleBlocks ?? []) : null
	const warning = trouble ?? shown?.data.stale?.message ?? null
	return (
		<ReaderContext.Provider value={reader}>
			<SurfaceContext.Provider value={LiveSurface}>
				<TextLinksContext.Provider value={links}>
					<header class="bar">
						{data !== null && data.choices.length > 0 && (
							<SubjectPicker choices={data.choices} chosen={data.chosen} isHeld={held !== null} onHold={pick} />
						)}
						<div class="warning" role="status">
							{warning !== null && (
								<p>
									{trouble ?? <Sentence text={warning} />}
									{data?.chosen && ` ${words.stale}`}
								</p>
							)}
						</div>
					</header>
					{data === null ? (
						<Waiting />
					) : data.picture !== null ? (
						<PictureView picture={data.picture} staleBlocks={stale} go={go} />
					) : data.team !== null ? (
						<TeamView team={data.team} go={go} pick={name => pick({ kind: 'plan', name })} />
					) : data.log !== null ? (
						<LogView log={data.log} go={go} />
					) : data.choices.some(({ kind }) => kind === 'plan') ? (
						<NothingChosen />
					) : (
						<NoPlan />
					)}
				</TextLinksContext.Provider>
			</SurfaceContext.Provider>
		</ReaderContext.Provider>
	)
}

/** A click anywhere in a line of sets goes to its text; keys have the button in it. */
function useRowClicks(go: (place: number) => void): void {
	useEffect(() => {
		const click = ({ target }: MouseEvent) => {
			// Who marks words, or means a button, wants something else.
			if (!(target instanceof Element) || target.closest('button, a, summary') || getSelection()?.isCollapsed === false) return
			const place = target.closest('[data-place]')?.getAttribute('data-place')
			if (place) go(Number(place))
		}
		document.addEventListener('click', click)
		return () => document.removeEventListener('click', click)
	}, [go])
}

function sameSubject(a: Subject | null, b: Subject | null): boolean {
	return a?.kind === b?.kind && a?.name === b?.name
}
