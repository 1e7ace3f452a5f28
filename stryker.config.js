export default {
  testRunner: 'vitest',
  vitest: { configFile: 'vitest.mutation.config.ts', related: true },
  coverageAnalysis: 'perTest',
  // The words of equations, sources and explanations are no logic.
  mutator: { excludedMutations: ['StringLiteral'] },
  concurrency: 2,
  ignorePatterns: ['dist', 'data', 'coverage', 'reports', 'docs', 'seeds-demo'],
  reporters: ['json', 'progress'],
  warnings: { slow: false },
  tempDirName: '.stryker-tmp',
};
