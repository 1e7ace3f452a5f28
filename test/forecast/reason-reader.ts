import { expect } from 'vitest';
import type { PostReading } from '../../src/forecast/evidence/inspection.ts';
import type { FenceFacts, SiteFacts } from '../../src/forecast/fence-facts.ts';
import { DEFAULT_SETTINGS } from '../../src/forecast/forecast-fence.ts';
import { type ReasonAsk, type ReasonChain, reasonChain } from '../../src/forecast/reason-chain.ts';
import type { ReasonStep } from '../../src/forecast/reason-step.ts';
import { groundlineOf } from './evidence/read-fence.ts';
import { EXAMPLE_FENCE } from './example-fence.ts';

/** The steps of one chain, found by part and symbol as a reader finds them on the page. */
export interface ReasonReader extends ReasonChain {
  readonly has: (group: string, symbol: string) => boolean;
  readonly step: (group: string, symbol: string, basis?: ReasonStep['basis']) => ReasonStep;
  /** The number of a step; fails where it is none. */
  readonly at: (group: string, symbol: string, basis?: ReasonStep['basis']) => number;
}

/** Reads the chain of a fence whose season 1 opens in 2027. */
export function readReasons(facts: FenceFacts, ask: ReasonAsk = {}): ReasonReader {
  const chain = reasonChain(facts, 2027, DEFAULT_SETTINGS, ask);
  const matching = (group: string, symbol: string, basis?: string): readonly ReasonStep[] =>
    chain.steps.filter(
      (step) => step.group === group && step.symbol === symbol && (basis === undefined || step.basis === basis),
    );
  const step = (group: string, symbol: string, basis?: string): ReasonStep => {
    const found = matching(group, symbol, basis);
    if (found.length !== 1) throw new Error(`${found.length} steps ${symbol} in ${group}`);
    return found[0]!;
  };
  return {
    ...chain,
    has: (group, symbol) => matching(group, symbol).length > 0,
    step,
    at: (group, symbol, basis) => {
      const { value } = step(group, symbol, basis);
      if (typeof value !== 'number') throw new Error(`${symbol} in ${group} is ${value}`);
      return value;
    },
  };
}

/** Holds that every step says where it belongs, in what unit it is, how it follows and where that comes from. */
export function expectWhole({ steps }: ReasonReader): void {
  for (const step of steps) {
    expect(['expected', 'code', 'both'], step.symbol).toContain(step.basis);
    for (const word of ['group', 'symbol', 'quantity', 'unit', 'equation', 'source', 'tag'] as const) {
      expect(step[word], `${word} of ${step.symbol}`).toMatch(/\S/);
    }
    expect(step.value, step.symbol).not.toBeNaN();
    expect(step.value, step.symbol).toBeDefined();
  }
}

/** The example fence with other facts. */
export const fenceWith = (change: Partial<FenceFacts>): FenceFacts => ({ ...EXAMPLE_FENCE, ...change });

/** The example fence on another site. */
export const siteWith = (change: Partial<SiteFacts>): FenceFacts =>
  fenceWith({ site: { ...EXAMPLE_FENCE.site, ...change } });

/** An inspection on 1 July 2026 that found the same of each of the eleven posts. */
export const foundAtAll = (found: Partial<PostReading>, day = '2026-07-01'): Pick<FenceFacts, 'inspections'> => ({
  inspections: [
    {
      ref: 'I-1',
      day,
      method: 'eye',
      readings: Array.from({ length: 11 }, (_, index) => ({ ...groundlineOf(index + 1, null), ...found })),
    },
  ],
});

/** What two storms told of the fence: all posts stood in the one, one leaned in the other. */
export const STORMS: Pick<FenceFacts, 'outcomes'> = {
  outcomes: [
    { ref: 'O1', storm: 'gale', day: '2026-05-02', gustMps: 27, gustSpread: 0.1, posts: 'all', result: 'stood' },
    { ref: 'O2', storm: 'squall', day: '2026-06-02', gustMps: 25, gustSpread: 0.1, posts: [4], result: 'leaned' },
    { ref: 'O3', storm: 'squall', day: '2026-06-02', gustMps: 25, gustSpread: 0.1, posts: 'all', result: 'stood' },
  ],
};

/** Days between two calendar days [d]. */
export const daysBetween = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / 86_400_000;
