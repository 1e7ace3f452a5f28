import { describe, expect, it } from 'vitest';
import { evidenceRemarks } from '../../../src/forecast/evidence/evidence-remarks.ts';
import type { EvidenceSummary } from '../../../src/forecast/evidence/evidence-summary.ts';

const SEEN: EvidenceSummary = {
  readPosts: [],
  readings: 1,
  storms: 1,
  unknowns: [],
  surprise: 0.4,
  disagrees: false,
  effectivePoints: 60,
  stormFit: -0.5,
};
const POOR = [
  'The storm reports fit hardly anything the model holds possible: check the gusts and what is recorded of the footings.',
];
const disagreeing = (surprise: number): readonly string[] => evidenceRemarks({ ...SEEN, disagrees: true, surprise });

describe('remarks on the evidence', () => {
  it('are none without evidence, and none where it fits', () => {
    expect(evidenceRemarks(null)).toEqual([]);
    expect(evidenceRemarks(SEEN)).toEqual([]);
  });

  it('say how improbable readings were that disagree with the model', () => {
    expect(disagreeing(0.004)).toEqual([
      'The readings disagree with the model: it gave them less than one chance in 250. The rot pace is taken twice as uncertain; check treatment class, install date and readings.',
    ]);
  });

  it.each([
    [0.0002, '5000'],
    [0.0001, '10,000'],
    [0, '10,000'],
  ])('call a chance of %s one in %s: no more than is known', (surprise, once) => {
    expect(disagreeing(surprise)[0]).toContain(`less than one chance in ${once}. `);
  });

  it('say so where storm reports fit no point well: less than e^-4 a post', () => {
    expect(evidenceRemarks({ ...SEEN, stormFit: -4 })).toEqual([]);
    expect(evidenceRemarks({ ...SEEN, stormFit: -4.01 })).toEqual(POOR);
  });

  it('say so where fewer than 16 points are left that fit', () => {
    expect(evidenceRemarks({ ...SEEN, effectivePoints: 16 })).toEqual([]);
    expect(evidenceRemarks({ ...SEEN, effectivePoints: 15.9 })).toEqual(POOR);
  });

  it('say both where both are so, readings first', () => {
    const both = evidenceRemarks({ ...SEEN, disagrees: true, surprise: 0.001, stormFit: -9, effectivePoints: 2 });
    expect(both).toHaveLength(2);
    expect(both[0]).toContain('one chance in 1000');
    expect(both[1]).toBe(POOR[0]);
  });
});
