/** Why a command does not do what it was asked: wrong usage, or a path that cannot be opened. The message is for people; the status is 2. */
export class Refusal extends Error {}

/** The exit statuses of every command. */
export const exitStatus = {
	/** Nothing at or above the level. */
	clean: 0,
	problems: 1,
	/** Wrong usage, a path that cannot be opened, or an internal fault. */
	refused: 2,
} as const
