import { env, l10n, Uri, window, workspace } from 'vscode'
import type { BaseLanguageClient } from 'vscode-languageclient'
import type { PreviewQuestion, Subject } from '../../../language/reports/preview.ts'
import type { FileRequest } from '../../outputs/write-file.ts'
import { tellThatTimesAreMissing, timesInSettings } from '../begin-times.ts'
import type { FileWriter } from '../file-writer.ts'
import { type ShownPicture, shownPicture } from '../shown-picture.ts'

interface Format extends Pick<FileRequest, 'format' | 'paper'> {
	readonly label: string
	readonly detail: string
	/** Of the file's name, after the name of what is saved. */
	readonly ending: string
	/** What files of that ending are called. */
	readonly called: string
}

/** Saves what the preview shows as a file: the person picks a format, then a place. */
export async function saveSheet(client: BaseLanguageClient, question: PreviewQuestion, write: FileWriter): Promise<void> {
	const shown = await shownPicture(client, question)
	if (!shown) return
	const format = await window.showQuickPick(formatsFor(shown), { title: l10n.t('Save as'), matchOnDetail: true })
	if (format) await save(shown, format, write)
}

/** Saves a page, where there is nothing to pick. */
export async function savePage(shown: ShownPicture, write: FileWriter): Promise<Uri | undefined> {
	return save(shown, pageFormat(), write)
}

function formatsFor({ picture }: ShownPicture): Format[] {
	const { sheet, volume } = picture
	// A calendar without an event is none (RFC 5545, 3.6).
	const hasSessions = sheet !== null && sheet.sessions.length > 0
	return [
		pageFormat(),
		...(sheet === null ? [] : pdfFormats()),
		...(hasSessions ? [calendarFormat()] : []),
		...(sheet === null ? [] : [setsFormat()]),
		...(volume === null ? [] : [volumeFormat()]),
	]
}

function pdfFormats(): Format[] {
	return [
		{
			label: l10n.t('PDF, A4'),
			detail: l10n.t('One week a page, with room to write'),
			format: 'pdf',
			paper: 'a4',
			ending: '.pdf',
			called: 'PDF',
		},
		{
			label: l10n.t('PDF, Letter'),
			detail: l10n.t('One week a page, with room to write'),
			format: 'pdf',
			paper: 'letter',
			ending: '.pdf',
			called: 'PDF',
		},
	]
}

function calendarFormat(): Format {
	return {
		label: l10n.t('Calendar'),
		detail: l10n.t('One event a session, for every calendar program; the settings say when sessions begin'),
		format: 'ics',
		paper: 'a4',
		ending: '.ics',
		called: l10n.t('Calendar'),
	}
}

function setsFormat(): Format {
	return {
		label: l10n.t('Table of all sets'),
		detail: l10n.t('One row a set, for spreadsheets (CSV)'),
		format: 'csv',
		paper: 'a4',
		ending: '.csv',
		called: 'CSV',
	}
}

function volumeFormat(): Format {
	return {
		label: l10n.t('Table of the weekly volume'),
		detail: l10n.t('One row a figure, for spreadsheets (CSV)'),
		format: 'volume-csv',
		paper: 'a4',
		ending: '-volume.csv',
		called: 'CSV',
	}
}

function pageFormat(): Format {
	return {
		label: l10n.t('Page'),
		detail: l10n.t('To look at and to print in a browser (HTML)'),
		format: 'html',
		paper: 'a4',
		ending: '.html',
		called: 'HTML',
	}
}

/** @returns where it was saved; `undefined` where it was not. */
async function save({ subject, picture }: ShownPicture, format: Format, write: FileWriter): Promise<Uri | undefined> {
	const folder = workspace.workspaceFolders?.[0]?.uri
	const name = fileName(subject) + format.ending
	const to = await window.showSaveDialog({
		...(folder ? { defaultUri: Uri.joinPath(folder, name) } : {}),
		title: l10n.t('Save as'),
		filters: { [format.called]: [format.ending.split('.').at(-1)!] },
	})
	if (!to) return undefined
	const { times, fault } = format.format === 'ics' ? timesInSettings() : { times: [], fault: null }
	try {
		await workspace.fs.writeFile(to, await write({ picture, ...pick(format), begin: times, locale: env.language }))
		const written = to.path.split('/').at(-1)!
		if (fault === null) void window.showInformationMessage(l10n.t('"{0}" is written.', written))
		else void tellThatTimesAreMissing(written, fault)
		return to
	} catch (problem) {
		const reason = problem instanceof Error ? problem.message : String(problem)
		void window.showErrorMessage(l10n.t('"{0}" cannot be written: {1}', name, reason))
		return undefined
	}
}

function pick({ format, paper }: Format): Pick<FileRequest, 'format' | 'paper'> {
	return { format, paper }
}

/** A name of a team's plan has a stroke in it, which would be a folder. */
export function fileName({ name }: Subject): string {
	return name.replaceAll('/', '-')
}
