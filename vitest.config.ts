import { defineConfig } from 'vitest/config';

const report = process.env.TEST_REPORT_FILE;

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts', 'test/**/*.test.tsx'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
    pool: 'forks',
    reporters: report ? ['default', ['json', { outputFile: report }]] : ['default'],
  },
});
