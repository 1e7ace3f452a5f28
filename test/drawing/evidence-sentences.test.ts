import { describe, expect, it } from 'vitest';
import {
  changeSentences,
  evidenceCountSentence,
  nothingSeenSentence,
  surpriseSentences,
} from '../../src/drawing/evidence-sentences.ts';
import type { EvidenceSummary, UnknownBelief } from '../../src/forecast/evidence/evidence-summary.ts';

const believed = (given: Partial<UnknownBelief>): UnknownBelief => ({
  unknown: 'pace',
  unit: 'mm/a',
  prior: { p10: 0.25, p50: 0.5, p90: 1 },
  afterReadings: { p10: 0.25, p50: 0.5, p90: 1 },
  posterior: { p10: 0.25, p50: 0.5, p90: 1 },
  movedBy: 'readings',
  ...given,
});
const seen = (given: Partial<EvidenceSummary>): EvidenceSummary => ({
  readPosts: [],
  readings: 3,
  storms: 0,
  unknowns: [],
  surprise: 0.4,
  disagrees: false,
  effectivePoints: 128,
  stormFit: 0,
  ...given,
});
const changes = (
  unknown: Partial<UnknownBelief>,
  given: Partial<EvidenceSummary> = {},
  version: number | null = null,
) => changeSentences(seen({ unknowns: [believed(unknown)], ...given }), version, 'metric');

describe('what evidence changed, in sentences', () => {
  it('says how much slower rot is, at which rate, and how much better that is known', () => {
    expect(changes({ posterior: { p10: 0.2, p50: 0.4, p90: 0.8 } })).toEqual([
      'The readings make its rot 20 % slower than published, 0.40 mm/a and not 0.50 mm/a in the middle.',
    ]);
    expect(changes({ posterior: { p10: 0.4, p50: 0.6, p90: 0.8 } }, { readings: 1 })).toEqual([
      'The reading makes its rot 20 % faster than published, 0.60 mm/a and not 0.50 mm/a in the middle; its likely range is 50 % narrower.',
    ]);
  });

  it('gives a factor where a percentage would be over a hundred, and the units asked for', () => {
    const summary = seen({ unknowns: [believed({ posterior: { p10: 1, p50: 2, p90: 4 } })] });
    expect(changeSentences(summary, null, 'us')).toEqual([
      'The readings make its rot 4.0 times as fast as published, 0.079 in/a and not 0.020 in/a in the middle.',
    ]);
  });

  it('names storms, and what was learned as something other than published', () => {
    const footing = {
      unknown: 'footing',
      unit: 'of the median',
      posterior: { p10: 0.2, p50: 0.45, p90: 0.8 },
    } as const;
    expect(changes({ ...footing, movedBy: 'storms' }, { storms: 1 }, 2)).toEqual([
      'The storm makes its footings 10 % weaker than expected before.',
    ]);
    expect(changes({ ...footing, movedBy: 'readings and storms' }, { storms: 2 })).toEqual([
      'The readings and the storms make its footings 10 % weaker than published.',
    ]);
  });

  it('keeps silent about what hardly moves, and says so where nothing does', () => {
    const agrees = ['What was seen agrees with what was expected and moves no unknown much.'];
    expect(changes({ movedBy: 'nothing' })).toEqual(agrees);
    expect(changes({ posterior: { p10: 0.255, p50: 0.503, p90: 1 } })).toEqual(agrees);
    expect(changes({ posterior: { p10: 0.4, p50: 0.5, p90: 0.7 } })).toEqual([
      'The readings leave its rot as fast as published; its likely range is 60 % narrower.',
    ]);
  });
});

describe('how much was seen', () => {
  it('counts readings, posts and storms', () => {
    const post = { day: '2026-05-12', inspectionRef: 'A', method: 'caliper', readings: 1, seen: 'measured' } as const;
    const read = { ...post, seenMm: 5, impliedRate: 0.5, depthMm: { p10: 4, p50: 5, p90: 6 } };
    const readPosts = [
      { ...read, post: 3 },
      { ...read, post: 4 },
    ];
    expect(evidenceCountSentence(seen({ readPosts, storms: 1 }))).toBe('3 readings at 2 posts and 1 storm count.');
    expect(evidenceCountSentence(seen({ readings: 0, storms: 1 }))).toBe('1 storm counts.');
  });

  it('is surprising only where it disagrees', () => {
    expect(surpriseSentences(seen({}))).toEqual([]);
    expect(surpriseSentences(seen({ disagrees: true, surprise: 0.004 })).join()).toContain(
      'less than one chance in 250',
    );
  });

  it('says what stands where nothing was seen', () => {
    expect(nothingSeenSentence(null)).toContain('published priors stand');
    expect(nothingSeenSentence(4)).toContain('acceptance 4');
    expect(nothingSeenSentence(4)).not.toContain('published');
  });
});
