import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

const patterns = process.env.MUTATION_TESTS?.split(' ');
if (!patterns) throw new Error('MUTATION_TESTS names no tests: run npm run mutation');
const isLeftOut = (pattern: string): boolean => pattern.startsWith('!');

/** Files that took least time come first: a mutant is done with at the first test that fails. */
class QuickestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    return (await super.sort(files)).reverse();
  }
}

/** The tests that judge the mutants of a part of the source, as `.ci/mutation.mjs` names them. */
export default defineConfig({
  test: {
    include: patterns.filter((pattern) => !isLeftOut(pattern)),
    exclude: patterns.filter(isLeftOut).map((pattern) => pattern.slice(1)),
    testTimeout: 60_000,
    sequence: { sequencer: QuickestFirst },
  },
});
