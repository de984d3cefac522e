import { defineConfig } from 'vitest/config'
import { textFiles } from './tests/text-files.ts'

export default defineConfig({
	plugins: [textFiles],
	// Property tests run long on a slow machine; no test is about time.
	test: {
		testTimeout: 300_000,
		hookTimeout: 120_000,
		expect: { poll: { timeout: 60_000 } },
		include: ['tests/{language,server,client}/**/*.test.{ts,tsx}'],
	},
})
