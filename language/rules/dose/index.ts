import type { Rule } from '../rule.ts'
import { aboveLimit } from './above-limit.ts'
import { backTooFast } from './back-too-fast.ts'
import { beyondRepMax } from './beyond-rep-max.ts'
import { carryOutsideRange } from './carry-outside-range.ts'
import { deloadNotLighter } from './deload-not-lighter.ts'
import { effortDisagrees } from './effort-disagrees.ts'
import { frequencyCap } from './frequency-cap.ts'
import { heavyBackToBack } from './heavy-back-to-back.ts'
import { heavyExposures } from './heavy-exposures.ts'
import { holdOutsideRange } from './hold-outside-range.ts'
import { intensityOutsideRange } from './intensity-outside-range.ts'
import { liftsOutsideTable } from './lifts-outside-table.ts'
import { loadJump } from './load-jump.ts'
import { muscleVolumeHigh } from './muscle-volume-high.ts'
import { muscleVolumeLow } from './muscle-volume-low.ts'
import { noLighterWeek } from './no-lighter-week.ts'
import { repsOutsideRange } from './reps-outside-range.ts'
import { setsOutsideRange } from './sets-outside-range.ts'
import { tooClose } from './too-close.ts'
import { volumeJump } from './volume-jump.ts'

export const doseRules: readonly Rule[] = [
	frequencyCap,
	tooClose,
	setsOutsideRange,
	repsOutsideRange,
	holdOutsideRange,
	carryOutsideRange,
	intensityOutsideRange,
	heavyExposures,
	heavyBackToBack,
	loadJump,
	volumeJump,
	backTooFast,
	noLighterWeek,
	deloadNotLighter,
	beyondRepMax,
	effortDisagrees,
	aboveLimit,
	liftsOutsideTable,
	muscleVolumeLow,
	muscleVolumeHigh,
]
