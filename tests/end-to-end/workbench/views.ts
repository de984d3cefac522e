/** One of the panel's views: the file that leads to it, what is picked where the file alone does not, and its heading. */
export interface View {
	readonly file: string
	readonly picked: string | undefined
	readonly heading: string
}

export const views: Readonly<Record<'plan' | 'block' | 'team' | 'log', View>> = {
	plan: { file: 'plans/mara-autumn.stave', picked: undefined, heading: 'Mara, to the regionals' },
	block: { file: 'blocks/hinge-rebuild.stave', picked: 'Block · Hinge rebuild', heading: 'Hinge rebuild' },
	team: { file: 'teams/everyone.stave', picked: undefined, heading: 'The club' },
	log: { file: 'logs/mara-lind.stave', picked: undefined, heading: 'Mara Lind' },
}
