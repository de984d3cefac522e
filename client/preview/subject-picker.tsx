import '@vscode-elements/elements/dist/vscode-checkbox/index.js'
import '@vscode-elements/elements/dist/vscode-single-select/index.js'
import { useMemo } from 'preact/hooks'
import type { PreviewChoice, Subject } from '../../language/reports/preview.ts'
import { panelWords as words } from './words.ts'

/** From so many choices on, typing finds one faster than looking. */
const many = 12

export interface SubjectPickerProps {
	readonly choices: readonly PreviewChoice[]
	readonly chosen: Subject | null
	/** What is shown stays, wherever the cursor goes. */
	readonly isHeld: boolean
	/** `null`: follow the cursor. */
	readonly onHold: (subject: Subject | null) => void
}

/** Says what is shown, and lets something else be picked: what is picked is held until the page follows the cursor again. */
export function SubjectPicker({ choices, chosen, isHeld, onHold }: SubjectPickerProps) {
	const value = chosen === null ? '' : keyOf(chosen)
	// The element takes every new list for a change, so a list that says the same must be the same.
	const said = JSON.stringify([choices, chosen === null])
	const options = useMemo(() => {
		const all = choices.map(choice => ({
			label: words.choice(choice.kind, choice.title, choice.lifterTitle),
			value: keyOf(choice),
			description: choice.name,
		}))
		return chosen === null ? [{ label: words.pick, value: '' }, ...all] : all
	}, [said])
	return (
		<div class="picker">
			<vscode-single-select
				label={words.shown}
				combobox={choices.length > many}
				options={options}
				value={value}
				onChange={event => {
					const picked = (event.currentTarget as HTMLElement & { value: string }).value
					const choice = choices.find(one => keyOf(one) === picked)
					if (choice && picked !== value) onHold({ kind: choice.kind, name: choice.name })
				}}
			/>
			<vscode-checkbox
				label={words.follow}
				checked={!isHeld}
				onChange={event => {
					const follows = (event.currentTarget as HTMLElement & { checked: boolean }).checked
					onHold(follows ? null : chosen)
				}}
			/>
		</div>
	)
}

function keyOf({ kind, name }: Subject): string {
	return `${kind} ${name}`
}
