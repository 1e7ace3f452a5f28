import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

const report = process.env.TEST_REPORT_FILE;

/** Rooms whose code keeps nothing between calls: their tests share what they import, which takes half as long. */
const PURE = ['units', 'decay', 'capacity', 'forecast', 'season', 'drawing', 'notify', 'published', 'docs'].map(
  (room) => `test/${room}/**/*.test.{ts,tsx}`,
);

export default defineConfig({
  test: {
    projects: [
      { extends: true, test: { name: 'pure', include: PURE, isolate: false } },
      { extends: true, test: { name: 'rest', include: ['test/**/*.test.{ts,tsx}'], exclude: PURE } },
    ],
    testTimeout: 60_000,
    hookTimeout: 60_000,
    setupFiles: ['test/properties-seed.ts'],
    pool: 'forks',
    // two also where there are only two cores: many tests wait for a process, a server or a page
    maxWorkers: Math.max(2, availableParallelism() - 1),
    reporters: report ? ['default', ['json', { outputFile: report }]] : ['default'],
  },
});
