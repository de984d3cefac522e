import '@vscode-elements/elements/dist/vscode-single-select/index.js'
import { useMemo } from 'preact/hooks'
import type { PlanChoice } from '../../language/reports/preview.ts'

/** From so many plans on, typing finds one faster than looking. */
const many = 12

export interface PlanPickerProps {
	readonly plans: readonly PlanChoice[]
	readonly chosen: string | null
	readonly onChoose: (plan: string) => void
}

/** The plans of the folder. */
export function PlanPicker({ plans, chosen, onChoose }: PlanPickerProps) {
	// The element takes every new list for a change, so a list that says the same must be the same.
	const said = JSON.stringify([plans, chosen])
	const options = useMemo(() => {
		const choices = plans.map(({ name, title, lifterTitle }) => ({
			label: `${lifterTitle} · ${title}`,
			value: name,
			description: name,
		}))
		return chosen === null ? [{ label: 'Pick a plan', value: '' }, ...choices] : choices
	}, [said])
	return (
		<vscode-single-select
			label="Plan"
			combobox={plans.length > many}
			options={options}
			value={chosen ?? ''}
			onChange={event => {
				const { value } = event.currentTarget as HTMLElement & { value: string }
				if (value !== '' && value !== chosen) onChoose(value)
			}}
		/>
	)
}
