import type { Candidate, CompiledProblem } from './compiled-problem.ts';

/** What may be done at a job while the stages before are held. */
export interface JobOffers {
  /** True where the job has to be done, since a stage is served in full that it counts in. */
  readonly forced: boolean;
  readonly offers: readonly Candidate[];
}

/**
 * The candidates of a job that leave the earlier stages as they are: where a stage is served in full, every job that can
 * count in it does.
 * @param inFull which stages are served in full, by stage
 */
export function jobOffers({ candidatesOfJob }: CompiledProblem, job: number, inFull: readonly boolean[]): JobOffers {
  const mine = candidatesOfJob[job]!;
  const must = inFull.reduce((mask, full, stage) => (full ? mask | (1 << stage) : mask), 0);
  const asked = mine.reduce((mask, { counts }) => mask | counts, 0) & must;
  return { forced: asked !== 0, offers: mine.filter(({ counts }) => (counts & asked) === asked) };
}
