import { describe, expect, it } from 'vitest';
import { decodeForecast, encodeForecast } from '../../src/forecast/forecast-codec.ts';
import { DEFAULT_SETTINGS, forecastFence } from '../../src/forecast/forecast-fence.ts';
import { EXAMPLE_FENCE, WARM_SITE } from './example-fence.ts';

describe('a stored forecast', () => {
  const variants = {
    plain: EXAMPLE_FENCE,
    'without line posts': { ...EXAMPLE_FENCE, run: { ...EXAMPLE_FENCE.run, runLengthM: 7 } },
    'without a hazard curve': {
      ...EXAMPLE_FENCE,
      site: { ...WARM_SITE, wind: { ...WARM_SITE.wind, hurricane: true } },
    },
    'that gains line posts when posts are added': {
      ...EXAMPLE_FENCE,
      run: { ...EXAMPLE_FENCE.run, runLengthM: 7 },
      works: [
        {
          ref: 'W',
          day: '2020-05-05',
          posts: 'all',
          kind: 'added-posts',
          positionsM: [1, 3.5, 4, 6],
          wood: EXAMPLE_FENCE.wood,
        },
      ],
    },
  } as const;
  for (const [name, facts] of Object.entries(variants)) {
    it(`${name} is read back equal in every value`, () => {
      const forecast = forecastFence(facts, 2027, DEFAULT_SETTINGS);
      expect(decodeForecast(encodeForecast(forecast))).toEqual(forecast);
    });
  }
  it('takes a third of the plain text or less', () => {
    const forecast = forecastFence(EXAMPLE_FENCE, 2027, DEFAULT_SETTINGS);
    expect(encodeForecast(forecast).length).toBeLessThan(JSON.stringify(forecast).length / 3);
  });
});
