import fc from 'fast-check';
import type { Band } from '../../src/forecast/band.ts';
import type { PostMoment, PostOutlook } from '../../src/forecast/post-outlook.ts';
import { SOUND_CONDITION } from '../../src/forecast/post-state.ts';

const even = (p50: number): Band => ({ p10: p50, p50, p90: p50 });

/** A moment of a made-up post. */
export const madeUpMoment = (changes: Partial<PostMoment> = {}): PostMoment => ({
  label: '2027',
  season: 1,
  day: '2027-06-01',
  depthMm: { p10: 4, p50: 8, p90: 14 },
  oneFaceMm: 0,
  cavityDiameterMm: 0,
  snapMps: { p10: 38, p50: 44, p90: 51 },
  leanMps: even(26),
  strengthLeft: { p10: 0.32, p50: 0.55, p90: 0.75 },
  ...changes,
});

/** A made-up post: a 4x4 that rots. */
export const madeUpPost = (changes: Partial<PostOutlook> = {}): PostOutlook => ({
  number: 1,
  positionM: 0,
  isLinePost: true,
  section: { kind: 'rectangular', widthMm: 88.9, depthMm: 88.9 },
  rots: true,
  sleeved: false,
  embedmentM: 0.61,
  condition: SOUND_CONDITION,
  moments: [madeUpMoment()],
  ...changes,
});

/** A made-up run of posts 2.4 m apart. */
export const madeUpRun = (count: number, of: (number: number) => Partial<PostOutlook> = () => ({})): PostOutlook[] =>
  Array.from({ length: count }, (_, index) =>
    madeUpPost({ number: index + 1, positionM: index * 2.4, ...of(index + 1) }),
  );

const bands = (max: number): fc.Arbitrary<Band> =>
  fc
    .tuple(
      fc.double({ min: 0, max, noNaN: true }),
      fc.double({ min: 0, max, noNaN: true }),
      fc.double({ min: 0, max, noNaN: true }),
    )
    .map((values) => values.toSorted((a, b) => a - b))
    .map(([p10, p50, p90]) => ({ p10: p10!, p50: p50!, p90: p90! }));

/** Any post that a forecast may show. */
export const anyPost: fc.Arbitrary<PostOutlook> = fc.record({
  number: fc.integer({ min: 1, max: 400 }),
  positionM: fc.double({ min: 0, max: 500, noNaN: true }),
  isLinePost: fc.boolean(),
  section: fc.oneof(
    fc.record({
      kind: fc.constant('rectangular' as const),
      widthMm: fc.double({ min: 30, max: 300, noNaN: true }),
      depthMm: fc.double({ min: 30, max: 300, noNaN: true }),
    }),
    fc.record({ kind: fc.constant('round' as const), diameterMm: fc.double({ min: 30, max: 300, noNaN: true }) }),
  ),
  rots: fc.boolean(),
  sleeved: fc.boolean(),
  embedmentM: fc.constantFrom(null, 0.61),
  condition: fc.record({
    broken: fc.boolean(),
    leaning: fc.boolean(),
    closedOff: fc.boolean(),
    collarCracked: fc.boolean(),
    railConnection: fc.constant(null),
    cavityDiameterMm: fc.constantFrom(0, 15, 40),
  }),
  moments: fc
    .array(
      fc.record({
        depthMm: bands(150),
        oneFaceMm: fc.double({ min: 0, max: 40, noNaN: true }),
        cavityDiameterMm: fc.constantFrom(0, 15, 40),
        snapMps: bands(80),
        leanMps: bands(80),
        strengthLeft: bands(1.3),
      }),
      { minLength: 1, maxLength: 3 },
    )
    .map((all) =>
      all.map(
        (one, index): PostMoment => ({
          ...one,
          label: `${2027 + index * 5}/28`,
          season: 1 + index * 5,
          day: '2027-06-01',
        }),
      ),
    ),
});
