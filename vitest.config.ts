import { defineConfig } from 'vitest/config'
import { textFiles } from './tests/text-files.ts'

export default defineConfig({
	plugins: [textFiles],
	test: { include: ['tests/{language,server,client}/**/*.test.{ts,tsx}'] },
})
