import { defineConfig } from 'vitest/config'

// Real editors are slow to start, and two at once starve each other.
export default defineConfig({
	test: {
		root: import.meta.dirname,
		include: ['*.test.ts'],
		fileParallelism: false,
		testTimeout: 120_000,
		hookTimeout: 180_000,
		expect: { poll: { timeout: 15_000 } },
	},
})
