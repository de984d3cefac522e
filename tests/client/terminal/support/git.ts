import { execFile } from 'node:child_process'
import { promisify } from 'node:util'

/** Runs git in a folder, with an author of its own and none of this machine's settings. */
export async function git(cwd: string, ...words: string[]): Promise<void> {
	const nobody = {
		GIT_AUTHOR_NAME: 'Test',
		GIT_AUTHOR_EMAIL: 'test@example.org',
		GIT_COMMITTER_NAME: 'Test',
		GIT_COMMITTER_EMAIL: 'test@example.org',
	}
	await promisify(execFile)('git', words, {
		cwd,
		env: { ...process.env, ...nobody, GIT_CONFIG_GLOBAL: '/dev/null', GIT_CONFIG_SYSTEM: '/dev/null' },
	})
}

/** Commits all that is there. */
export async function commit(cwd: string): Promise<void> {
	await git(cwd, 'add', '--all')
	await git(cwd, 'commit', '-q', '-m', 'As it is')
}
