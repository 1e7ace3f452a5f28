import { describe, expect, it } from 'vitest';
import { beliefRows, readPostRows } from '../../src/drawing/evidence-table.ts';
import type { EvidenceSummary } from '../../src/forecast/evidence/evidence-summary.ts';

const prior = { p10: 0.127, p50: 0.254, p90: 1.27 };
const after = { p10: 0.254, p50: 0.508, p90: 0.762 };
const read = {
  post: 12,
  day: '2026-05-12',
  inspectionRef: 'A',
  method: 'awl-or-probe',
  readings: 2,
  seen: 'at least',
  seenMm: 12.7,
  impliedRate: 0.508,
  depthMm: { p10: 12.7, p50: 15.24, p90: 25.4 },
} as const;
const SEEN: EvidenceSummary = {
  readPosts: [read, { ...read, post: 3, readings: 1, seen: 'measured', impliedRate: 0 }],
  readings: 3,
  storms: 1,
  unknowns: [
    { unknown: 'pace', unit: 'mm/a', prior, afterReadings: after, posterior: after, movedBy: 'readings' },
    { unknown: 'footing', unit: 'of the median', prior, afterReadings: prior, posterior: after, movedBy: 'storms' },
  ],
  surprise: 0.3,
  disagrees: false,
  effectivePoints: 90,
  stormFit: 0,
};

describe('evidence as rows', () => {
  it('shows pace in the units asked for and the others as factors', () => {
    const [pace, footing] = beliefRows(SEEN, 'us');
    expect(pace).toEqual({
      unknown: 'Rot pace',
      unit: 'in/a',
      before: { p10: '0.0050', p50: '0.010', p90: '0.050' },
      afterReadings: { p10: '0.010', p50: '0.020', p90: '0.030' },
      afterStorms: { p10: '0.010', p50: '0.020', p90: '0.030' },
      movedBy: 'readings',
    });
    expect(footing).toMatchObject({ unit: '×', before: { p50: '0.25' }, afterStorms: { p50: '0.51' } });
    expect(beliefRows(SEEN, 'metric')[0]).toMatchObject({ unit: 'mm/a', before: { p10: '0.13', p50: '0.25' } });
  });

  it('lists posts in order, with bounds as bounds', () => {
    expect(readPostRows(SEEN, 'us')).toEqual([
      {
        post: '3',
        day: '2026-05-12',
        how: 'awl or probe',
        seen: '0.50 in',
        rate: '–',
        believed: '0.60 in (0.50–1.00)',
      },
      {
        post: '12',
        day: '2026-05-12',
        how: 'awl or probe, the last of 2 readings',
        seen: 'at least 0.50 in',
        rate: 'at least 0.020 in/a',
        believed: '0.60 in (0.50–1.00)',
      },
    ]);
    expect(readPostRows(SEEN, 'metric')[1]).toMatchObject({ seen: 'at least 12.7 mm', rate: 'at least 0.51 mm/a' });
  });
});
