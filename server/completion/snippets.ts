import type { DefinitionKind } from '../../language/model/definitions.ts'
import { links, muscles, patterns } from '../../language/model/vocabulary.ts'

/** Something whole that a word begins, with the places to fill in: `${1:…}` a word of one's own, `${1|…,…|}` one of several. */
export interface Snippet {
	readonly label: string
	readonly detail: string
	readonly text: string
}

const oneOf = (place: number, list: readonly string[]) => `\${${place}|${list.join(',')}|}`

/** Whole definitions, by the word that begins them. */
export const definitionSnippets: Readonly<Record<DefinitionKind, Snippet>> = {
	movement: {
		label: 'movement …',
		detail: 'A movement with what it trains',
		text: `movement \${1:pin-squat} "\${2:Pin squat}"
  pattern ${oneOf(3, patterns)}
  trains ${oneOf(4, links)}
  muscles ${oneOf(5, muscles)} 1
  equipment \${6:barbell}
  source "\${7:common practice}"
$0`,
	},
	breakdown: {
		label: 'breakdown …',
		detail: 'How a lift breaks, and what training must then hold',
		text: `breakdown \${1:knees-cave} "\${2:Knees cave in}"
  weak link ${oneOf(3, links)}
  needs \${4:stability} \${5:6} sets a week
  source "\${6:common practice}"
$0`,
	},
	progression: {
		label: 'progression …',
		detail: 'An ordered way with a gate between the steps',
		text: `progression \${1:side-trunk} "\${2:Trunk, side}"
  step \${3:side-plank}
  step \${4:suitcase-hold} after \${3:side-plank} held \${5:45 s}
$0`,
	},
	limits: {
		label: 'limits …',
		detail: 'What holds over a whole week or block',
		text: `limits \${1:house}
  load rises at most \${2:10}% a week
  session at most \${3:120} min
$0`,
	},
	gym: {
		label: 'gym …',
		detail: 'Bars, discs and what else is there',
		text: `gym \${1:north-hall} "\${2:North Hall}"
  bar barbell \${3:20 kg}
  plates \${4:25 kg x 4, 20 kg x 4, 10 kg x 4, 5 kg x 4, 2.5 kg x 4, 1.25 kg x 4}
  collars \${5:2.5 kg}
  dumbbells \${6:2-40 kg by 2 kg}
$0`,
	},
	lifter: {
		label: 'lifter …',
		detail: 'Who trains: bests, gym, days',
		text: `lifter \${1:mara-lind} "\${2:Mara Lind}"
  trains at \${3:north-hall}
  best \${4:deadlift} \${5:100 kg} on \${6:2026-09-12}
  available \${7:monday, wednesday, friday}
$0`,
	},
	block: {
		label: 'block …',
		detail: 'Weeks of training, written for no one by name',
		text: `block \${1:hinge-rebuild} "\${2:Hinge rebuild}"
  weeks \${3:4}
  targets \${4:deadlift}

  session \${5:heavy-pull} on \${6:monday}
    main \${4:deadlift} \${7:4 x 5 at 70%}
    $0`,
	},
	plan: {
		label: 'plan …',
		detail: 'Blocks on the calendar of a lifter',
		text: `plan \${1:mara-autumn} for \${2:mara-lind}
  start \${3:2026-10-05}
  run \${4:hinge-rebuild}
$0`,
	},
	log: {
		label: 'log …',
		detail: 'What was done',
		text: `log \${1:mara-lind}
  on \${2:2026-10-05} session \${3:heavy-pull}
    did \${4:deadlift} \${5:4 x 5 at 100 kg rpe 7}
    felt \${6:7} for \${7:70 min}
$0`,
	},
	team: {
		label: 'team …',
		detail: 'Lifters who train together',
		text: `team \${1:juniors} "\${2:Juniors}"
  members \${3:mara-lind, tom-aas}
$0`,
	},
	rules: {
		label: 'rules …',
		detail: 'How loudly rules speak in this folder',
		text: `rules \${1:house}
  \${2:unused-definition} ${oneOf(3, ['off', 'hint', 'info', 'warning', 'error'])}
$0`,
	},
}

/** A session and the kinds of item, by the word that begins them. */
export const lineSnippets: Readonly<Record<string, Snippet>> = {
	session: {
		label: 'session …',
		detail: 'A session with its first item',
		text: `session \${1:heavy-pull} on \${2:monday}
  main \${3:deadlift} \${4:4 x 5} at \${5:70%}
  $0`,
	},
	main: {
		label: 'main …',
		detail: 'A main lift, week by week',
		text: `main \${1:deadlift}
  week 1: \${2:4 x 5 at 70%}
  week 2: \${3:4 x 5 at 72.5%}
  $0`,
	},
	accessory: {
		label: 'accessory …',
		detail: 'An accessory that grows week by week',
		text: `accessory \${1:plank} \${2:3 x 30 s} rest \${3:60 s}
  each week add \${4:5 s}
$0`,
	},
}
