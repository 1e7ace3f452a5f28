import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS, forecastFence } from '../../src/forecast/forecast-fence.ts';
import { EXAMPLE_FENCE, PINE_4X4 } from './example-fence.ts';

describe('the forecast of one fence', () => {
  it('lets no snap speed rise from season to season where no works were done', () => {
    const build = fc.record({
      treatmentClass: fc.constantFrom(
        'ground-contact',
        'above-ground-stock',
        'redcedar-redwood-heartwood',
        'unknown-treated',
      ),
      earliest: fc.constantFrom('2004-05-01', '2015-06-30'),
      spanDays: fc.constantFrom('2004-05-01', '2016-06-30', '2019-01-01'),
      runLengthM: fc.double({ min: 4, max: 60, noNaN: true }),
    });
    fc.assert(
      fc.property(build, ({ treatmentClass, earliest, spanDays, runLengthM }) => {
        const { seasons } = forecastFence(
          {
            ...EXAMPLE_FENCE,
            run: { ...EXAMPLE_FENCE.run, runLengthM },
            wood: { ...PINE_4X4, treatmentClass: treatmentClass },
            installed: { earliest, latest: spanDays > earliest ? spanDays : earliest },
          },
          2027,
          DEFAULT_SETTINGS,
        );
        for (let index = 1; index < seasons.length; index += 1) {
          for (const name of ['line', 'ends'] as const) {
            const [before, after] = [seasons[index - 1]![name], seasons[index]![name]];
            if (before && after) {
              expect(after.snapMps.p10).toBeLessThanOrEqual(before.snapMps.p10);
              expect(after.snapMps.p50).toBeLessThanOrEqual(before.snapMps.p50);
              expect(after.snapMps.p90).toBeLessThanOrEqual(before.snapMps.p90);
            }
          }
        }
      }),
      { numRuns: 25 },
    );
  });
});
