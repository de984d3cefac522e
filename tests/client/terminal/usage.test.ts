import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { barstave } from './support/program.ts'

const cwd = path.join(import.meta.dirname, 'language-page')

const timeForm = 'A time is written like 17:30, from 0:00 to 23:59; before it may stand a weekday, "morning" or "evening".'

describe('a command that is not understood', () => {
	test.each([
		['chek', 'There is no command "chek". Did you mean check?'],
		['dance', 'There is no command "dance". "barstave --help" lists them.'],
		['check --formt json', 'There is no option "--formt". Did you mean --format?'],
		['check --quick', 'There is no option "--quick". "barstave check --help" lists them.'],
		['check --fail-on bad', '"bad" does not go with --fail-on. It takes one of: error, warning, info.'],
		['check --today 1.2.2026', '"1.2.2026" does not go with --today. A date is written like 2026-10-05.'],
		['check --fix --stdin', '--fix and --stdin do not go together.'],
		['check --today', '--today needs a word behind it. "barstave check --help" says which.'],
		['sheet mara-autumn --week 0', '"0" does not go with --week. Weeks are counted 1, 2, 3 …'],
		['sheet mara-autumn --begin 25:00', `"25:00" does not go with --begin. ${timeForm}`],
		['sheet mara-autumn --begin 7', '"7" does not go with --begin. Write "7:00" or "19:00".'],
		['sheet mara-autumn --begin 19.30', '"19.30" does not go with --begin. Write "19:30".'],
		['sheet mara-autumn --begin noon', '"noon" does not go with --begin. Write "12:00".'],
		['sheet mara-autumn --begin 17:30,soon', `"17:30,soon" does not go with --begin. "soon" is no time. ${timeForm}`],
		[
			'sheet mara-autumn --begin 17:30,evening=7',
			'"17:30,evening=7" does not go with --begin. Write "evening 19:00" instead of "evening=7".',
		],
		[
			'sheet mara-autumn --begin 17:30,18:00',
			'"17:30,18:00" does not go with --begin. "17:30" and "18:00" are for the same sessions: keep one of them.',
		],
		['why mara-autumn', 'The date is missing. It is written: barstave why [options] <plan> <date> <movement>.'],
		['why mara-autumn monday deadlift', '"monday" does not go there. A date is written like 2026-10-05.'],
		[
			'sheet Mara autumn',
			'A word too many; a name of several words stands in quotes. It is written: barstave sheet [options] <plan>.',
		],
		['sheet', 'Which plan? Write its name behind the command. There is: mara-autumn.'],
		['volume', 'Which plan or block? Write its name behind the command. There are: hinge-rebuild, mara-autumn.'],
	])('%s', async (words, message) => {
		expect(await barstave(words.split(' '), { cwd })).toEqual({ status: 2, out: '', said: `${message}\n` })
	})

	test('says how commands end, and takes -h as well', async () => {
		const { out, status } = await barstave(['-h'])
		expect([status, out.includes('with 1 where "check" has found problems')]).toEqual([0, true])
		expect(await barstave(['check', '-h'])).toEqual(await barstave(['check', '--help']))
	})
})

test('a title serves as well as a name', async () => {
	const byName = await barstave(['sheet', 'mara-autumn'], { cwd })
	expect(await barstave(['sheet', 'MARA-AUTUMN'], { cwd })).toEqual(byName)
	const why = await barstave(['why', 'mara-autumn', '2026-10-05', 'deadlift'], { cwd })
	expect(await barstave(['why', 'mara-autumn', '2026-10-05', 'Deadlift'], { cwd })).toEqual(why)
	expect(why.status).toBe(0)
})
