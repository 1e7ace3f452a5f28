import { describe, expect, it } from 'vitest';
import { CLIMATE_BANDS, climateBand } from '../../src/decay/climate-band.ts';
import { climateFactor } from '../../src/decay/climate-factor.ts';

const measured = (rainMmPerYear: number, meanTemperatureC: number) =>
  ({ kind: 'measured', rainMmPerYear, meanTemperatureC, dryMonths: 0 }) as const;

describe('climate band', () => {
  it('is the zone itself where a decay zone was entered', () => {
    for (const zone of CLIMATE_BANDS) expect(climateBand({ kind: 'decay-zone', zone })).toBe(zone);
  });

  it('is the zone with the nearest factor, over the whole range of climates', () => {
    const factors = [1, 1.3, 1.6, 2, 2.4];
    for (let temperature = -5; temperature <= 30; temperature += 0.37) {
      const climate = measured(1400, temperature);
      const factor = climateFactor(climate);
      const distances = factors.map((each) => Math.abs(each - factor));
      expect(distances[climateBand(climate) - 1]).toBeCloseTo(Math.min(...distances), 12);
    }
  });

  it('goes from 1 in the cold to 5 in the hot and wet, and never falls with rain', () => {
    expect(climateBand(measured(300, 2))).toBe(1);
    expect(climateBand(measured(3000, 29))).toBe(5);
    let last = 1;
    for (let rain = 200; rain <= 3000; rain += 50) {
      const band = climateBand(measured(rain, 19));
      expect(band).toBeGreaterThanOrEqual(last);
      last = band;
    }
  });
});
