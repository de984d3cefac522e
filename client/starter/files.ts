import block from './block.stave'
import gym from './gym.stave'
import lifter from './lifter.stave'
import plan from './plan.stave'

/** A small workspace to begin with: it checks without a warning, and its comments say what to change first. In the order to read them. */
export const starterFiles: readonly { readonly path: string; readonly text: string }[] = [
	{ path: 'gym.stave', text: gym },
	{ path: 'lifter.stave', text: lifter },
	{ path: 'block.stave', text: block },
	{ path: 'plan.stave', text: plan },
]
