import axe from 'axe-core'
import type { Frame, Page } from 'playwright-core'

/** Looks through a page with axe, every rule that it has on; gives what is wrong, each with the element where it is. */
export async function violationsIn(frame: Frame | Page): Promise<string[]> {
	await frame.evaluate(axe.source)
	const { violations } = await frame.evaluate(async () => {
		const { axe: inPage } = window as unknown as { axe: { run(root: Document): Promise<axe.AxeResults> } }
		return inPage.run(document)
	})
	return violations.flatMap(({ id, help, nodes }) =>
		nodes.map(({ target, failureSummary }) => `${id}: ${help} (${target.join(' ')})\n${failureSummary}`),
	)
}
