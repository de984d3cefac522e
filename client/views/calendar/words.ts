/** What the calendar says. */
export const calendarWords = {
	heading: 'Calendar',
	week: 'Week',
	block: 'Block',
	lighter: 'lighter week',
	meet: 'Meet',
	blockWeek: (week: string) => `week ${week}`,
	empty: 'no session',
	between: (weeks: number) => `${weeks} weeks without a session`,
	part: { morning: 'morning', evening: 'evening' },
} as const
