import armsAndShoulders from './arms-and-shoulders.stave'
import carry from './carry.stave'
import hinge from './hinge.stave'
import hingeBreakdowns from './hinge-breakdowns.stave'
import limits from './limits.stave'
import press from './press.stave'
import pressBreakdowns from './press-breakdowns.stave'
import progressions from './progressions.stave'
import rowAndPull from './row-and-pull.stave'
import singleLeg from './single-leg.stave'
import squat from './squat.stave'
import squatBreakdowns from './squat-breakdowns.stave'
import trunk from './trunk.stave'
import warmUp from './warm-up.stave'

/** The built-in library: what every workspace knows before it says anything. Paths are file names, texts are taken in by the build. */
export const libraryFiles: readonly { path: string; text: string }[] = [
	{ path: 'hinge.stave', text: hinge },
	{ path: 'squat.stave', text: squat },
	{ path: 'single-leg.stave', text: singleLeg },
	{ path: 'press.stave', text: press },
	{ path: 'row-and-pull.stave', text: rowAndPull },
	{ path: 'trunk.stave', text: trunk },
	{ path: 'carry.stave', text: carry },
	{ path: 'arms-and-shoulders.stave', text: armsAndShoulders },
	{ path: 'warm-up.stave', text: warmUp },
	{ path: 'hinge-breakdowns.stave', text: hingeBreakdowns },
	{ path: 'squat-breakdowns.stave', text: squatBreakdowns },
	{ path: 'press-breakdowns.stave', text: pressBreakdowns },
	{ path: 'progressions.stave', text: progressions },
	{ path: 'limits.stave', text: limits },
]
