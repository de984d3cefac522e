import { defineConfig } from 'vitest/config'

// Real editors are slow to start, and two at once starve each other. No test is about time: on a busy machine a reload takes half a minute.
export default defineConfig({
	test: {
		root: import.meta.dirname,
		include: ['*.test.ts'],
		fileParallelism: false,
		testTimeout: 300_000,
		hookTimeout: 180_000,
		expect: { poll: { timeout: 60_000 } },
	},
})
