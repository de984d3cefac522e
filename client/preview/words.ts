import type { Subject } from '../../language/reports/preview.ts'

/** What the panel itself says, around the views. */
export const panelWords = {
	shown: 'Shown',
	pick: 'Pick what to show',
	follow: 'Follow the cursor',
	stale: 'What cannot be read is shown as it last was.',
	choice(kind: Subject['kind'], title: string, lifterTitle: string | null): string {
		switch (kind) {
			case 'plan':
				return lifterTitle === null ? title : `${lifterTitle} · ${title}`
			case 'block':
				return `Block · ${title}`
			case 'team':
				return `Team · ${title}`
			case 'log':
				return `Log · ${title}`
		}
	},
	waiting: 'Reading the plans…',
	nothingYet: 'No plan yet',
	nothingYetHelp: 'A plan puts blocks on a calendar for one lifter. Write one like this, and its sheet appears here:',
	which: 'Which plan?',
	whichHelp: 'Pick one above, or open a file that a plan uses.',
} as const
