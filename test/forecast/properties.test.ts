import fc from 'fast-check';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import type { PostSection } from '../../src/capacity/post-section.ts';
import { sectionArea, sectionModulus } from '../../src/capacity/section-properties.ts';
import { decayDepth } from '../../src/decay/decay-depth.ts';
import { medianDecayRate } from '../../src/decay/decay-rate.ts';
import { fenceBelief } from '../../src/forecast/evidence/fence-belief.ts';
import type { GroundlineReading } from '../../src/forecast/evidence/inspection.ts';
import type { StormOutcome } from '../../src/forecast/evidence/storm-outcome.ts';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { fenceStates, stateOn } from '../../src/forecast/fence-state.ts';
import { DEFAULT_SETTINGS, forecastFence } from '../../src/forecast/forecast-fence.ts';
import { normalQuantile } from '../../src/forecast/normal-distribution.ts';
import { SOUND_CONDITION } from '../../src/forecast/post-state.ts';
import { exposureYears, RUNNING_CLOCK } from '../../src/forecast/rot-clock.ts';
import { snapResistance } from '../../src/forecast/snap-resistance.ts';
import type { Works } from '../../src/forecast/works.ts';
import { dayNumber } from '../../src/units/calendar-day.ts';
import { inspectionOn } from './evidence/read-fence.ts';
import { EXAMPLE_FENCE, PINE_4X4 } from './example-fence.ts';

const section: fc.Arbitrary<PostSection> = fc.oneof(
  fc.record({
    kind: fc.constant('rectangular' as const),
    widthMm: fc.double({ min: 50, max: 250, noNaN: true }),
    depthMm: fc.double({ min: 50, max: 250, noNaN: true }),
  }),
  fc.record({ kind: fc.constant('round' as const), diameterMm: fc.double({ min: 60, max: 300, noNaN: true }) }),
);
const millimetres = fc.double({ min: 0, max: 60, noNaN: true });

describe('capacity', () => {
  it('never rises with the depth of rot, of a cut, or of a cavity', () => {
    fc.assert(
      fc.property(
        section,
        millimetres,
        millimetres,
        millimetres,
        millimetres,
        (of, depthMm, oneFaceMm, cavity, more) => {
          const loss = { depthMm, oneFaceMm, cavityDiameterMm: cavity };
          const worse = [
            { ...loss, depthMm: depthMm + more },
            { ...loss, oneFaceMm: oneFaceMm + more },
            { ...loss, cavityDiameterMm: cavity + more },
          ];
          for (const each of worse) {
            expect(sectionModulus(of, each)).toBeLessThanOrEqual(sectionModulus(of, loss) * (1 + 1e-12));
            expect(sectionArea(of, each)).toBeLessThanOrEqual(sectionArea(of, loss) * (1 + 1e-12));
          }
        },
      ),
      { numRuns: 400 },
    );
  });

  it('of a post never rises with depth, whatever its fibre and its rails', () => {
    const [sample] = stateOn(fenceStates(EXAMPLE_FENCE), '2026-03-01').posts;
    fc.assert(
      fc.property(
        section,
        millimetres,
        millimetres,
        fc.double({ min: 0.5, max: 2, noNaN: true }),
        fc.option(fc.double({ min: 0, max: 1, noNaN: true })),
        (of, depthMm, more, fibre, rail) => {
          const post = {
            ...sample!,
            wood: { ...PINE_4X4, section: of },
            condition: { ...SOUND_CONDITION, railConnection: rail },
          };
          const at = (depth: number) =>
            snapResistance(post, { depthMm: depth, oneFaceMm: 0, cavityDiameterMm: 0 }, fibre);
          const [before, after] = [at(depthMm), at(depthMm + more)];
          expect(after.momentNm).toBeLessThanOrEqual(before.momentNm * (1 + 1e-12));
          expect(after.shearN).toBeLessThanOrEqual(before.shearN * (1 + 1e-12));
          expect(after.railN).toBe(before.railN);
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('depth', () => {
  const rate = fc.double({ min: 0.001, max: 20, noNaN: true });
  const years = fc.double({ min: 0, max: 80, noNaN: true });

  it('never falls with time', () => {
    fc.assert(
      fc.property(rate, years, years, (r, t, more) => {
        expect(decayDepth(t + more, r)).toBeGreaterThanOrEqual(decayDepth(t, r) * (1 - 1e-12));
      }),
      { numRuns: 500 },
    );
  });

  it('never falls with the rate', () => {
    fc.assert(
      fc.property(rate, rate, years, (r, more, t) => {
        expect(decayDepth(t, r + more)).toBeGreaterThanOrEqual(decayDepth(t, r) * (1 - 1e-12));
      }),
      { numRuns: 500 },
    );
  });

  it('is never made larger on any later day by a treatment or a liner', () => {
    const day = fc.integer({ min: 0, max: 20_000 });
    const stop = fc.record({ fromDay: day, years: fc.double({ min: 0.5, max: 12, noNaN: true }) });
    fc.assert(
      fc.property(
        fc.array(stop, { maxLength: 5 }),
        stop,
        fc.option(day),
        day,
        rate,
        (done, another, liner, later, r) => {
          const clock = {
            stops: done.map(({ fromDay, years: lasts }) => ({ fromDay, toDay: fromDay + lasts * 365.2425 })),
            linerFromDay: liner,
          };
          const treated = {
            ...clock,
            stops: [...clock.stops, { fromDay: another.fromDay, toDay: another.fromDay + another.years * 365.2425 }],
          };
          const depthBy = (each: typeof clock): number => decayDepth(exposureYears(each, 0, later), r);
          expect(depthBy(treated)).toBeLessThanOrEqual(depthBy(clock) * (1 + 1e-12));
          expect(depthBy(clock)).toBeLessThanOrEqual(
            decayDepth(exposureYears(RUNNING_CLOCK, 0, later), r) * (1 + 1e-12),
          );
        },
      ),
      { numRuns: 500 },
    );
  });
});

describe('the forecast of a fence', () => {
  const readingKind = fc.oneof(
    fc.record({ kind: fc.constant('depth' as const), depthMm: fc.double({ min: 0, max: 30, noNaN: true }) }),
    fc.record({ kind: fc.constant('sound-to' as const), depthMm: fc.double({ min: 1, max: 10, noNaN: true }) }),
    fc.record({ kind: fc.constant('soft-to' as const), depthMm: fc.double({ min: 1, max: 10, noNaN: true }) }),
  );
  const readings = fc.array(fc.option(readingKind), { minLength: 1, maxLength: 11 });

  it('never lets depth fall from season to season, after any readings', () => {
    fc.assert(
      fc.property(readings, (seen) => {
        const facts = { ...EXAMPLE_FENCE, inspections: [inspectionOn('2026-03-01', seen)] };
        const { seasons } = forecastFence(facts, 2026, DEFAULT_SETTINGS);
        for (const [index, season] of seasons.slice(1).entries()) {
          expect(season.depthMm.p50).toBeGreaterThanOrEqual(seasons[index]!.depthMm.p50 - 1e-9);
          expect(season.depthMm.p90).toBeGreaterThanOrEqual(seasons[index]!.depthMm.p90 - 1e-9);
        }
      }),
      { numRuns: 12 },
    );
  });

  it('does not depend on the order of rows: works, inspections, readings, outcomes', () => {
    const works: readonly Works[] = [
      { ref: 'W1', day: '2020-04-01', kind: 'groundline-treatment', posts: 'all', yearsEffective: 5 },
      { ref: 'W2', day: '2022-05-01', kind: 'post-swap', posts: [4], wood: PINE_4X4 },
      { ref: 'W3', day: '2023-05-01', kind: 'trimmer-guard', posts: 'all' },
    ];
    const outcomes: readonly StormOutcome[] = [
      { ref: 'O1', storm: 'A', day: '2019-05-01', gustMps: 24, gustSpread: 0.1, posts: 'all', result: 'stood' },
      { ref: 'O2', storm: 'A', day: '2019-05-01', gustMps: 24, gustSpread: 0.1, posts: [3], result: 'leaned' },
      { ref: 'O3', storm: 'B', day: '2024-05-01', gustMps: 27, gustSpread: 0.1, posts: [5, 6], result: 'stood' },
    ];
    const inspections = [
      inspectionOn('2021-03-01', [{ kind: 'depth', depthMm: 2 }, null, { kind: 'sound-to', depthMm: 3 }]),
      inspectionOn('2025-03-01', [
        { kind: 'depth', depthMm: 4 },
        { kind: 'depth', depthMm: 1 },
      ]),
    ];
    const facts: FenceFacts = { ...EXAMPLE_FENCE, works, outcomes, inspections };
    const expected = JSON.stringify(forecastFence(facts, 2026, DEFAULT_SETTINGS));
    const shuffled = <T>(items: readonly T[]): fc.Arbitrary<T[]> =>
      fc.shuffledSubarray([...items], { minLength: items.length, maxLength: items.length });
    fc.assert(
      fc.property(shuffled(works), shuffled(outcomes), shuffled(inspections), fc.boolean(), (w, o, i, turn) => {
        const turned = i.map((each) => ({ ...each, readings: turn ? [...each.readings].reverse() : each.readings }));
        const again = forecastFence({ ...facts, works: w, outcomes: o, inspections: turned }, 2026, DEFAULT_SETTINGS);
        expect(JSON.stringify(again) === expected).toBe(true);
      }),
      { numRuns: 10 },
    );
  });

  it('after more readings is never less sure of the pace, on average over what may be read', () => {
    // Readings drawn from the model itself, fence by fence; the spread of the pace after 0, 1, 3 and 8 of them.
    const random = xoroshiro128plus(7);
    const normal = (): number => normalQuantile(((random.next() >>> 0) + 0.5) / 2 ** 32);
    const built = '2011-03-01';
    const day = '2026-03-01';
    const median = medianDecayRate('ground-contact', EXAMPLE_FENCE.site.climate);
    const years = (dayNumber(day) - dayNumber(built)) / 365.2425;
    const counts = [1, 3, 8] as const;
    const sums = counts.map(() => 0);
    const fences = 60;
    for (let fence = 0; fence < fences; fence += 1) {
      const pace = 0.6 * normal();
      const all = Array.from({ length: 8 }, (): GroundlineReading => {
        const depthMm = Math.min(44, decayDepth(years, median * Math.exp(pace + 0.54 * normal())));
        return { kind: 'depth', depthMm: depthMm + 2 * normal() };
      });
      for (const [index, count] of counts.entries()) {
        const facts: FenceFacts = {
          ...EXAMPLE_FENCE,
          installed: { earliest: built, latest: built },
          inspections: [inspectionOn(day, all.slice(0, count))],
        };
        sums[index]! += fenceBelief(facts, fenceStates(facts)).pace!.byDate[0]!.sd / fences;
      }
    }
    expect(sums[0]).toBeLessThan(1);
    expect(sums[1]).toBeLessThan(sums[0]!);
    expect(sums[2]).toBeLessThan(sums[1]!);
  });
});
