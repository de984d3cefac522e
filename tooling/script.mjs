// Every script of tooling/ may be the first thing that runs in a fresh clone, under whatever Node the machine has. So these files use
// nothing but Node 20 itself; what is installed is imported only inside the work that `script` is given.
import { Hindrance } from './needs/hindrance.mjs'
import { installModules } from './needs/modules.mjs'
import { continueUnderModernNode } from './needs/node.mjs'

/**
 * Runs a script's work once the node modules are there, under Node 22 or later. The work gets the words of the command line, and may give
 * an exit status. What hinders it is printed plainly.
 */
export async function script(work) {
	try {
		installModules()
		continueUnderModernNode()
		process.exitCode = (await work(process.argv.slice(2))) ?? 0
	} catch (problem) {
		if (!(problem instanceof Hindrance)) throw problem
		console.error(`\n${problem.message}`)
		process.exitCode = 1
	}
}
