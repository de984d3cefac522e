import {
	type Disposable,
	type ExtensionContext,
	l10n,
	type QuickPickItem,
	QuickPickItemKind,
	StatusBarAlignment,
	type StatusBarItem,
	type Uri,
	window,
	workspace,
} from 'vscode'
import { type BaseLanguageClient, State } from 'vscode-languageclient'
import type { Picked, PlanPick, PlansAnswer, PlansQuestion } from '../../language/reports/chosen-plan.ts'
import { isOurs, withoutIcons } from './texts.ts'

/** What was picked in each folder, by its URI; kept over a reload. */
type KeptPicks = Readonly<Record<string, Picked>>
const keptPicks = 'barstave.picked'

/** The item in the status bar that says whose loads are shown, and lets others be picked. */
export class ChosenPlan implements Disposable {
	private readonly item: StatusBarItem
	private readonly subscriptions: Disposable[]
	/** Of several questions that are under way, the last one counts. */
	private asked = 0

	constructor(
		private readonly context: ExtensionContext,
		private readonly client: BaseLanguageClient,
	) {
		this.item = window.createStatusBarItem('barstave.chosenPlan', StatusBarAlignment.Right, 100)
		this.item.name = l10n.t('Whose loads are shown')
		this.item.command = 'barstave.choosePlan'
		this.subscriptions = [
			this.item,
			client.onNotification('barstave/plansChanged', () => this.show()),
			client.onDidChangeState(({ newState }) => {
				if (newState === State.Running) void this.pickAgain()
				else this.item.hide()
			}),
			window.onDidChangeActiveTextEditor(editor => {
				// Beside the preview, or with the focus in a list, the file that was in front still is what it is about.
				if (isOurs(editor)) void this.show()
			}),
		]
	}

	dispose(): void {
		for (const subscription of this.subscriptions) subscription.dispose()
	}

	/** A server that has just started knows nothing of what was picked. */
	private async pickAgain(): Promise<void> {
		for (const [folder, picked] of Object.entries(this.context.workspaceState.get<KeptPicks>(keptPicks, {})))
			await this.client.sendRequest<PlansAnswer>('barstave/choosePlan', { uri: `${folder}/`, picked } satisfies PlanPick)
		await this.show()
	}

	private async show(): Promise<void> {
		const question = ++this.asked
		const answer = await this.ask()
		if (question !== this.asked) return
		const plan = answer?.plans.find(({ name }) => name === answer.shown)
		if (!plan) return this.item.hide()
		this.item.text = `$(person) ${withoutIcons(plan.lifterTitle)}`
		this.item.tooltip = l10n.t('Loads are those of {0}, in the plan {1}. Click to choose others.', plan.lifterTitle, plan.title)
		this.item.accessibilityInformation = {
			label: l10n.t('Loads are those of {0}, in the plan {1}. Choose others.', plan.lifterTitle, plan.title),
			role: 'button',
		}
		this.item.show()
	}

	/** Lets the person pick a plan, a lifter, or none. */
	async choose(): Promise<void> {
		const answer = await this.ask()
		if (!answer) return
		if (answer.plans.length === 0) {
			await window.showInformationMessage(l10n.t('There is no plan in this folder yet, so there are no loads to show.'))
			return
		}
		const picked = await window.showQuickPick(choicesFrom(answer), {
			title: l10n.t('Whose loads are shown'),
			placeHolder: l10n.t('In hints behind a percent, under the mouse and in the preview'),
			matchOnDescription: true,
		})
		if (picked?.picks !== undefined) await this.pick(picked.picks)
	}

	private async pick(picked: Picked | null): Promise<void> {
		const uri = this.uriInFront()
		const folder = this.folderOf(uri)
		if (folder !== undefined) {
			const { [folder]: _, ...others } = this.context.workspaceState.get<KeptPicks>(keptPicks, {})
			await this.context.workspaceState.update(keptPicks, picked === null ? others : { ...others, [folder]: picked })
		}
		await this.client.sendRequest<PlansAnswer>('barstave/choosePlan', { ...this.questionAbout(uri), picked } satisfies PlanPick)
		await this.show()
	}

	/** `undefined` where the server is not there; it will be asked when it is. */
	private async ask(): Promise<PlansAnswer | undefined> {
		if (this.client.state !== State.Running) return undefined
		return this.client.sendRequest<PlansAnswer>('barstave/plans', this.questionAbout(this.uriInFront())).catch(() => undefined)
	}

	private questionAbout(uri: Uri | undefined): PlansQuestion {
		return uri ? { uri: this.client.code2ProtocolConverter.asUri(uri) } : {}
	}

	private uriInFront(): Uri | undefined {
		return [window.activeTextEditor, ...window.visibleTextEditors].find(isOurs)?.document.uri
	}

	private folderOf(uri: Uri | undefined): string | undefined {
		const folder = uri ? workspace.getWorkspaceFolder(uri) : workspace.workspaceFolders?.[0]
		return folder && this.client.code2ProtocolConverter.asUri(folder.uri)
	}
}

interface Choice extends QuickPickItem {
	/** `undefined` for the line between two kinds. */
	readonly picks?: Picked | null
}

function choicesFrom({ plans, picked }: PlansAnswer): Choice[] {
	const here = l10n.t('chosen')
	const choice = (label: string, picks: Picked | null, description: string): Choice => ({
		label: withoutIcons(label),
		description: same(picks, picked) ? `${withoutIcons(description)} ✓ ${here}` : withoutIcons(description),
		picks,
	})
	const lifters = new Map(plans.map(({ lifter, lifterTitle }) => [lifter, lifterTitle]))
	return [
		choice(l10n.t('Those of the file in front'), null, l10n.t('the first plan that it is about')),
		{ label: l10n.t('Plans'), kind: QuickPickItemKind.Separator },
		...plans.map(({ name, title, lifterTitle }) => choice(`${lifterTitle} · ${title}`, { plan: name }, name)),
		{ label: l10n.t('Lifters'), kind: QuickPickItemKind.Separator },
		...[...lifters].map(([lifter, title]) => choice(title, { lifter }, lifter)),
	]
}

function same(one: Picked | null, other: Picked | null): boolean {
	return JSON.stringify(one) === JSON.stringify(other)
}
