export default {
  testRunner: 'vitest',
  vitest: { configFile: 'vitest.mutation.config.ts', related: true },
  coverageAnalysis: 'perTest',
  // The words of equations, sources and explanations are no logic.
  mutator: { excludedMutations: ['StringLiteral'] },
  concurrency: 2,
  ignorePatterns: ['dist', 'data', 'coverage', 'reports', 'docs', 'seeds-demo', '.stryker-tmp*'],
  // Long enough that a busy machine makes no mutant look noticed: what runs out of time runs for ever.
  timeoutMS: 20_000,
  timeoutFactor: 4,
  reporters: ['json', 'progress'],
  warnings: { slow: false },
  tempDirName: '.stryker-tmp',
};
