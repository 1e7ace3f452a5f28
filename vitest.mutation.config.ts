import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

const room = process.env.MUTATION_ROOM;
if (!room) throw new Error('MUTATION_ROOM names no room: run npm run mutation');

/** Files that took least time come first: a mutant is done with at the first test that fails. */
class QuickestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    return (await super.sort(files)).reverse();
  }
}

/** The tests that judge the mutants of a room: its own. */
export default defineConfig({
  test: {
    include: [`test/${room}/**/*.test.ts`],
    testTimeout: 60_000,
    sequence: { sequencer: QuickestFirst },
  },
});
