import type { ShownLevel } from '../../../language/model/problem.ts'
import type { CheckResult } from '../checking/check-result.ts'
import type { Style } from '../text/style.ts'

/** What a report needs beside the result. */
export interface ReportSetting {
	readonly style: Style
	/** Columns that a line for people may take. */
	readonly width: number
	/** The path of a file as people and services open it: from the current folder where that holds the workspace, with `/`. */
	shownPath(file: string): string
	/** A line of a file, from 1; `undefined` where the file is not at hand. */
	lineOf(file: string, line: number): string | undefined
	/** All files checked; empty where only results are at hand. */
	readonly files: readonly string[]
	/** From this level on a problem fails the check. */
	readonly failOn: ShownLevel
	/** How many problems `--fix` would take away. */
	readonly correctable: number
}

/** Makes a result one text: one kind of report. */
export type Reporter = (result: CheckResult, setting: ReportSetting) => string
