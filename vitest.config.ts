import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

const report = process.env.TEST_REPORT_FILE;

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts', 'test/**/*.test.tsx'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
    setupFiles: ['test/properties-seed.ts'],
    pool: 'forks',
    // two also where there are only two cores: many tests wait for a process, a server or a page
    maxWorkers: Math.max(2, availableParallelism() - 1),
    reporters: report ? ['default', ['json', { outputFile: report }]] : ['default'],
  },
});
