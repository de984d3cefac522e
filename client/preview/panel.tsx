import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import type { Place } from '../../language/reports/preview.ts'
import { SurfaceContext } from '../views/charts/surface.ts'
import { PictureView } from '../views/picture-view.tsx'
import { ReaderContext } from '../views/reader/context.ts'
import { readerOf } from '../views/reader/reader.ts'
import { TextLinksContext } from '../views/text-links.ts'
import type { Editor } from './editor.ts'
import { NoPlan, NothingChosen, Waiting } from './empty-states.tsx'
import { keepLastGood, type Shown } from './keep-last-good.ts'
import { useKeptScroll } from './kept-scroll.ts'
import { litPlaces } from './lit-places.ts'
import { LiveSurface } from './live-surface.tsx'
import { type Cursor, choose, cursor, ready, reveal, show, silence } from './messages.ts'
import { PlanPicker } from './plan-picker.tsx'

/** The preview panel: a plan picker above the picture of one plan, kept up to date by what the extension sends. */
export function Panel({ editor }: { editor: Editor }) {
	const reader = useMemo(() => readerOf(navigator.language), [])
	const [shown, setShown] = useState<Shown | null>(null)
	const [trouble, setTrouble] = useState<string | null>(null)
	const [at, setAt] = useState<Cursor | null>(null)
	const plan = useRef(editor.kept?.plan ?? null)

	useEffect(() => {
		editor.on(show, data => {
			setTrouble(null)
			setShown(last => keepLastGood(last, data))
		})
		editor.on(cursor, message => setAt(message.at))
		editor.on(silence, ({ message }) => setTrouble(message))
		editor.start()
		editor.send(ready, { plan: plan.current })
	}, [editor])

	useKeptScroll(editor, plan, shown !== null)

	const picture = shown?.data.picture ?? null
	const places = picture?.written?.places
	const go = useMemo(() => (place: Place) => editor.send(reveal, place), [editor])
	const links = useMemo(
		() => ({
			go(index: number) {
				const place = places?.[index]
				if (place) go(place)
			},
			lit: litPlaces(places ?? [], at),
		}),
		[places, at, go],
	)

	useRowClicks(links.go)

	const warning = trouble ?? shown?.data.stale?.message ?? null
	return (
		<ReaderContext.Provider value={reader}>
			<SurfaceContext.Provider value={LiveSurface}>
				<TextLinksContext.Provider value={links}>
					<div class="bar">
						{shown !== null && shown.data.plans.length > 0 && (
							<PlanPicker
								plans={shown.data.plans}
								chosen={shown.data.chosen}
								onChoose={name => {
									plan.current = name
									editor.keep({ plan: name, scroll: null })
									editor.send(choose, { plan: name })
								}}
							/>
						)}
						<div class="warning" role="status">
							{warning !== null && (
								<p dir="auto">
									{warning}
									{picture !== null && ' What cannot be read is shown as it last was.'}
								</p>
							)}
						</div>
					</div>
					{shown === null ? (
						<Waiting />
					) : picture !== null ? (
						<PictureView picture={picture} staleBlocks={trouble === null ? shown.staleBlocks : null} go={go} />
					) : shown.data.plans.length === 0 ? (
						<NoPlan />
					) : (
						<NothingChosen />
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
