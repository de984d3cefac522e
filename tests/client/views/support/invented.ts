import type { LoadSheet, SheetItem, SheetSession, SheetSet } from '../../../../language/reports/load-sheet.ts'
import type { Picture } from '../../../../language/reports/preview.ts'
import type { VolumeWeek, WeeklyVolume } from '../../../../language/reports/weekly-volume.ts'

/** Invented people and loads, in the shapes of the reports. Each builder takes what a test is about and fills in the rest. */
export function set(change: Partial<SheetSet> = {}): SheetSet {
	return {
		optional: false,
		reps: { from: 5, to: 5 },
		openEnded: false,
		seconds: null,
		forReps: false,
		metres: null,
		forTime: false,
		clusterReps: null,
		clusterRestSeconds: null,
		eachSide: false,
		percent: null,
		of: null,
		rpe: null,
		rir: null,
		effortAtMost: false,
		untilRpe: null,
		untilRir: null,
		exact: null,
		load: null,
		loadTo: null,
		unit: 'kg',
		perSide: null,
		reason: null,
		tempo: null,
		restSeconds: 180,
		...change,
	}
}

export function item(change: Partial<SheetItem> = {}): SheetItem {
	return {
		movement: 'deadlift',
		title: 'Deadlift',
		role: 'main',
		insteadOf: null,
		withItemAbove: false,
		hands: 1,
		loadAdded: false,
		sets: [set()],
		notes: [],
		milestones: [],
		...change,
	}
}

export function session(change: Partial<SheetSession> = {}): SheetSession {
	return {
		id: 'mara-autumn.rebuild-1.week-1.heavy-pull',
		date: '2026-10-05',
		weekday: 'monday',
		part: null,
		block: 'rebuild',
		week: 1,
		planWeek: 1,
		session: 'heavy-pull',
		title: null,
		gym: 'north-hall',
		deload: false,
		minutes: 41,
		notes: [],
		items: [item()],
		...change,
	}
}

export function sheet(sessions: readonly SheetSession[]): LoadSheet {
	return { version: 1, plan: 'mara-autumn', lifter: 'mara-lind', unit: 'kg', sessions }
}

export function week(change: Partial<VolumeWeek> = {}): VolumeWeek {
	return {
		week: 1,
		block: 'rebuild',
		blockWeek: 1,
		from: '2026-10-05',
		deload: false,
		sessions: 1,
		minutes: 41,
		lifts: {},
		muscles: {},
		musclesTo: {},
		links: {
			stability: { sets: '0', setsTo: null, seconds: 0, secondsTo: null },
			drive: { sets: '0', setsTo: null, seconds: 0, secondsTo: null },
		},
		excludedSets: 0,
		...change,
	}
}

export function volume(weeks: readonly VolumeWeek[]): WeeklyVolume {
	return { version: 1, of: 'mara-autumn', unit: 'kg', weeks }
}

export function picture(change: Partial<Picture> = {}): Picture {
	return {
		kind: 'plan',
		title: 'Mara, autumn',
		lifterTitle: 'Mara Lind',
		sheet: sheet([session()]),
		blockSheet: null,
		asks: null,
		calendar: null,
		gates: [],
		caps: [],
		volume: volume([week()]),
		needs: [null],
		titles: { blocks: { rebuild: 'Rebuild' }, gyms: {} },
		meets: [],
		problems: [],
		cautions: [],
		ways: null,
		written: null,
		...change,
	}
}
