import { describe, expect, it } from 'vitest';
import { methodText, outcomeText, readingText } from '../../src/drawing/evidence-text.ts';
import type { PostReading } from '../../src/forecast/evidence/inspection.ts';

const NOTHING: PostReading = {
  post: 3,
  groundline: null,
  cavityMm: null,
  leanDegrees: null,
  collarCracked: null,
  railConnection: null,
  trimmerCutMm: null,
  closedOff: false,
};

describe('a reading in words', () => {
  it.each([
    [{ kind: 'depth', depthMm: 6.35 }, '0.25 in of rot on each face', '6.3 mm of rot on each face'],
    [{ kind: 'depth', depthMm: 0 }, 'no rot', 'no rot'],
    [{ kind: 'residual-width', widthMm: 76.2 }, '3.00 in of sound width left', '76.2 mm of sound width left'],
    [
      { kind: 'residual-circumference', circumferenceMm: 381 },
      '15.00 in of sound girth left',
      '381.0 mm of sound girth left',
    ],
    [{ kind: 'sound-to', depthMm: 3 }, 'sound to 0.12 in', 'sound to 3.0 mm'],
    [{ kind: 'soft-to', depthMm: 12.7 }, 'soft to 0.50 in at least', 'soft to 12.7 mm at least'],
    [{ kind: 'broken' }, 'broken at the groundline', 'broken at the groundline'],
  ] as const)('says of %o whether it is lost or left', (groundline, us, metric) => {
    expect(readingText({ ...NOTHING, groundline }, 'us')).toBe(us);
    expect(readingText({ ...NOTHING, groundline }, 'metric')).toBe(metric);
  });

  it('says everything else that was looked at, and only that', () => {
    const all = { cavityMm: 25.4, leanDegrees: 4, collarCracked: true, railConnection: 0.5, trimmerCutMm: 6.35 };
    expect(readingText({ ...NOTHING, ...all, closedOff: true }, 'us')).toBe(
      'hollow, 1.00 in across, 4° out of plumb, collar cracked, weakest rail connection at 50 % of a sound one, trimmer cut 0.25 in, dangerous, closed off',
    );
    const none = { cavityMm: 0, leanDegrees: 0, collarCracked: false, trimmerCutMm: 0 };
    expect(readingText({ ...NOTHING, ...none }, 'us')).toBe('no hollow, plumb, collar sound, no trimmer cut');
  });
});

it('names every method in words', () => {
  expect(methodText('caliper')).toBe('caliper on the sound shell');
  expect(methodText('eye')).toBe('by eye');
});

it('says what a storm did to which posts', () => {
  expect(outcomeText({ posts: 'all', result: 'stood' }, false)).toBe('all posts stood');
  expect(outcomeText({ posts: 'all', result: 'stood' }, true)).toBe('all other posts stood');
  expect(outcomeText({ posts: [3, 4], result: 'leaned' }, true)).toBe('posts 3, 4 leaned');
  expect(outcomeText({ posts: [5], result: 'snapped' }, true)).toBe('post 5 snapped');
});
