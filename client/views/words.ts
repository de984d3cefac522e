/** What stands around the parts of a page: its facts, the ways to its parts, and its problems. */
export const pageWords = {
	parts: 'Parts of this page',
	asks: 'What it asks',
	calendar: 'Calendar',
	sheet: 'Week by week',
	volume: 'Weekly volume',
	gates: 'Gates',
	problems: 'Open problems',
	members: 'Members',
	block: 'Block',
	loadsIn: (unit: string) => `loads in ${unit}`,
	inPercents: 'in percents of the best',
	meet: 'Meet',
	noProblems: 'no open problems',
	none: 'None.',
} as const
