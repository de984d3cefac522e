import { writeFile } from 'node:fs/promises'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { commit, git } from './support/git.ts'
import { barstave } from './support/program.ts'
import { sound, withError, workspaceOf } from './support/workspace.ts'

describe('check --new-since', () => {
	test('shows what the revision did not have, also where lines have moved and files have other names', async () => {
		const cwd = await workspaceOf({
			'club/a.stave': withError,
			'club/b.stave': withError.replace('first-steps', 'b').replace('no-such', 'no-other'),
		})
		await git(cwd, 'init', '-q')
		await commit(cwd)
		const words = ['check', '--new-since', 'HEAD', '--format', 'json', '--workspace', 'club']
		const unchanged = await barstave(words, { cwd })
		expect(unchanged.status).toBe(0)
		expect(JSON.parse(unchanged.out)).toMatchObject({ files: 2, problems: [] })

		await writeFile(path.join(cwd, 'club/a.stave'), `// moved\n\n${withError}    accessory no-third-movement 3 x 30 s\n`)
		await git(cwd, 'mv', 'club/b.stave', 'club/c.stave')
		const changed = await barstave(words, { cwd })
		expect(changed.status).toBe(1)
		expect(JSON.parse(changed.out).problems).toMatchObject([{ file: 'a.stave', line: 7, code: 'unknown-name' }])
		expect(JSON.parse(changed.out).problems).toHaveLength(1)
	})

	test('knows what a revision had on a file that is faulty because of another one', async () => {
		const movement = 'movement no-such-movement "Own hold"\n'
		const cwd = await workspaceOf({ 'a.stave': withError, 'own.stave': movement })
		await git(cwd, 'init', '-q')
		await commit(cwd)
		await writeFile(path.join(cwd, 'own.stave'), '// taken out\n')
		const ended = await barstave(['check', '--new-since', 'HEAD', '--format', 'json'], { cwd })
		expect(JSON.parse(ended.out).problems).toMatchObject([{ file: 'a.stave', line: 4, code: 'unknown-name' }])
	})

	test('says what is wrong with a revision', async () => {
		const cwd = await workspaceOf({ 'a.stave': sound })
		const outside = await barstave(['check', '--new-since', 'HEAD'], { cwd, env: { GIT_CEILING_DIRECTORIES: path.dirname(cwd) } })
		expect(outside).toMatchObject({ status: 2, out: '', said: expect.stringContaining('--new-since') })
		await git(cwd, 'init', '-q')
		await commit(cwd)
		for (const revision of ['nowhere', '--output=x', 'HEAD^{tree}:a.stave']) {
			const ended = await barstave(['check', `--new-since=${revision}`], { cwd })
			expect(ended).toMatchObject({ status: 2, out: '', said: expect.stringContaining(revision) })
		}
	})
})
