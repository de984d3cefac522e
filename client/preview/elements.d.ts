import type { Option } from '@vscode-elements/elements/dist/includes/vscode-select/types.js'
import type { HTMLAttributes } from 'preact'

declare module 'preact' {
	namespace JSX {
		interface IntrinsicElements {
			'vscode-single-select': HTMLAttributes<HTMLElement> & {
				label?: string
				combobox?: boolean
				value?: string
				options?: readonly Partial<Option>[]
			}
			'vscode-checkbox': HTMLAttributes<HTMLElement> & {
				label?: string
				checked?: boolean
			}
		}
	}
}
