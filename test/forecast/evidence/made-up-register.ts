import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { decayDepth } from '../../../src/decay/decay-depth.ts';
import { medianDecayRate, POST_PACE_SPREAD } from '../../../src/decay/decay-rate.ts';
import type { FenceFacts } from '../../../src/forecast/fence-facts.ts';
import { normalQuantile } from '../../../src/forecast/normal-distribution.ts';
import { DAYS_PER_YEAR, dayFromNumber, dayNumber } from '../../../src/units/calendar-day.ts';
import { EXAMPLE_FENCE, WARM_SITE } from '../example-fence.ts';
import { inspectionOn } from './read-fence.ts';

/** Standard normal numbers from a seeded generator. */
export function normals(seed: number): () => number {
  const generator = xoroshiro128plus(seed);
  // small seeds leave most bits of the first states empty
  for (let i = 0; i < 50; i += 1) generator.next();
  return () => normalQuantile(((generator.next() >>> 0) + 0.5) / 2 ** 32);
}

const READ_ON = '2026-03-01';
const METHOD_ERROR_MM = 2;

/** A fence whose first posts were read with an awl at an age; posts scatter about the fence's offset from the published pace. */
export function readFence(
  ref: string,
  next: () => number,
  { offset, years, posts }: { readonly offset: number; readonly years: number; readonly posts: number },
): FenceFacts {
  const built = dayFromNumber(Math.round(dayNumber(READ_ON) - years * DAYS_PER_YEAR));
  const exposure = (dayNumber(READ_ON) - dayNumber(built)) / DAYS_PER_YEAR;
  const published = medianDecayRate('ground-contact', WARM_SITE.climate);
  const readings = Array.from({ length: posts }, () => {
    const rate = published * Math.exp(offset + POST_PACE_SPREAD * next());
    return { kind: 'depth', depthMm: decayDepth(exposure, rate) + METHOD_ERROR_MM * next() } as const;
  });
  return {
    ...EXAMPLE_FENCE,
    ref,
    installed: { earliest: built, latest: built },
    inspections: [inspectionOn(READ_ON, readings)],
  };
}

/** Fences of one register: each has its own offset about the shift, ages from 10 to 22 years. */
export const readRegister = (
  next: () => number,
  { shift, ownSpread, fences, posts }: Readonly<Record<'shift' | 'ownSpread' | 'fences' | 'posts', number>>,
): readonly FenceFacts[] =>
  Array.from({ length: fences }, (_, index) =>
    readFence(`F-${String(index).padStart(3, '0')}`, next, {
      offset: shift + ownSpread * next(),
      years: 10 + (index % 5) * 3,
      posts,
    }),
  );
