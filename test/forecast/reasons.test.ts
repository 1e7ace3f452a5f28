import { beforeAll, describe, expect, it } from 'vitest';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { seasonOne } from '../../src/forecast/fence-forecast.ts';
import { DEFAULT_SETTINGS, forecastFence } from '../../src/forecast/forecast-fence.ts';
import { explainForecast, learnedVersion } from '../../src/forecast/reasons.ts';
import { sensitivityOf } from '../../src/forecast/sensitivity.ts';
import { inspectionOn } from './evidence/read-fence.ts';
import { EXAMPLE_FENCE } from './example-fence.ts';

const explain = (ask?: Parameters<typeof explainForecast>[3]) =>
  explainForecast(EXAMPLE_FENCE, 2027, DEFAULT_SETTINGS, ask);
const numberAt = (
  reasons: ReturnType<typeof explain>,
  symbol: string,
  basis: 'expected' | 'code' | 'both' = 'both',
): number => {
  const step = reasons.steps.find((entry) => entry.symbol === symbol && (basis === 'both' || entry.basis === basis));
  return step!.value as number;
};

describe('the reasons of a forecast', () => {
  it('can be followed by hand from step to step', () => {
    const reasons = explain();
    const [f, g] = [numberAt(reasons, 'f'), numberAt(reasons, 'g')];
    expect(numberAt(reasons, 'k_climate')).toBeCloseTo(f ** 0.3 * g ** 0.2, 12);
    expect(numberAt(reasons, 'r')).toBeCloseTo(
      numberAt(reasons, 'phi') * numberAt(reasons, 'k_wood') * numberAt(reasons, 'k_climate'),
      12,
    );
    const k =
      0.613 * numberAt(reasons, 'Kz', 'expected') * 0.85 * 0.85 * numberAt(reasons, 'Cf L') * numberAt(reasons, 's');
    expect(numberAt(reasons, 'k', 'expected')).toBeCloseTo(k, 9);
    const moment = (numberAt(reasons, 'f', 'expected') * numberAt(reasons, 'S')) / 1000;
    expect(numberAt(reasons, 'M')).toBeCloseTo(moment, 6);
    expect(numberAt(reasons, 'V_bend')).toBeCloseTo(Math.sqrt(moment / (numberAt(reasons, 'e') * k)), 9);
  });

  it('end in the speeds that the forecast gives', () => {
    const season = seasonOne(forecastFence(EXAMPLE_FENCE, 2027, DEFAULT_SETTINGS));
    const reasons = explain();
    expect(numberAt(reasons, 'V_snap')).toBe(season.line!.snapMps.p50);
    expect(numberAt(reasons, 'V_lean')).toBe(season.line!.leanMps.p50);
    expect(numberAt(reasons, 'V_post')).toBeCloseTo(season.line!.codeSnapMps, 3);
    expect(numberAt(reasons, 'V_footing')).toBeCloseTo(season.line!.codeLeanMps, 3);
  });

  it('give unit, equation, source and tag for every step', () => {
    for (const ask of [{}, { seasonLabel: 'new' }, { seasonLabel: '2040' }, { which: 'ends' as const }]) {
      for (const step of explain(ask).steps) {
        expect(step.unit, step.symbol).not.toBe('');
        expect(step.equation, step.symbol).not.toBe('');
        expect(step.source, step.symbol).not.toBe('');
        expect(step.tag, step.symbol).not.toBe('');
        expect(Number.isNaN(step.value), step.symbol).toBe(false);
      }
    }
  });

  it('explain the ends where asked, and sound wood at installation', () => {
    const ends = explain({ which: 'ends' });
    expect(ends.postNumbers).toEqual([2, 10]);
    expect(ends.group).toBe('ends');
    const fresh = explain({ seasonLabel: 'new' });
    expect(numberAt(fresh, 'd')).toBe(0);
    expect(numberAt(fresh, 'S/S0')).toBe(1);
  });

  it('say which posts of what age they are of, and by which model', () => {
    const reasons = explain({ seasonLabel: '2030' });
    expect(reasons).toMatchObject({ fenceRef: 'EX-1', season: '2030', day: '2030-03-01', group: 'line posts' });
    // 1 March 2015 to 1 March 2030: 5,479 days
    expect(reasons.ageYears).toBeCloseTo(5479 / 365.2425, 10);
    expect(reasons.modelVersion).toBe(forecastFence(EXAMPLE_FENCE, 2027, DEFAULT_SETTINGS).modelVersion);
    expect(explain({ seasonLabel: 'new' }).ageYears).toBe(0);
    expect(reasons.unknowns).toEqual(forecastFence(EXAMPLE_FENCE, 2027, DEFAULT_SETTINGS).unknowns);
  });

  it('count the age of a post from the day on which it was swapped in', () => {
    const swapped: FenceFacts = {
      ...EXAMPLE_FENCE,
      works: [{ kind: 'post-swap', ref: 'W', day: '2028-06-01', posts: 'all', wood: EXAMPLE_FENCE.wood }],
    };
    const later = explainForecast(swapped, 2027, DEFAULT_SETTINGS, { seasonLabel: '2029' });
    // 1 June 2028 to 1 March 2029: 273 days
    expect(later.ageYears).toBeCloseTo(273 / 365.2425, 10);
  });

  it('name the seasons there are where one is asked for that there is not', () => {
    expect(() => explain({ seasonLabel: '1999' })).toThrow(/no season "1999".*new, 2016 to 2056/);
  });
});

describe('the reasons of a fence at which something was seen', () => {
  const seen: FenceFacts = {
    ...EXAMPLE_FENCE,
    inspections: [
      inspectionOn('2026-05-12', [
        { kind: 'depth', depthMm: 17 },
        { kind: 'depth', depthMm: 15 },
        { kind: 'sound-to', depthMm: 20 },
      ]),
    ],
    outcomes: [
      { ref: 'O', storm: 'gale', day: '2026-06-02', gustMps: 24, gustSpread: 0.1, posts: 'all', result: 'stood' },
    ],
  };
  let reasons: ReturnType<typeof explain>;
  let forecast: ReturnType<typeof forecastFence>;
  beforeAll(() => {
    reasons = explainForecast(seen, 2027, DEFAULT_SETTINGS);
    forecast = forecastFence(seen, 2027, DEFAULT_SETTINGS);
  });

  it('end in the speeds that the forecast gives, which are not those of the priors', () => {
    const { line } = seasonOne(forecast);
    expect(numberAt(reasons, 'V_snap')).toBe(line!.snapMps.p50);
    expect(numberAt(reasons, 'V_lean')).toBe(line!.leanMps.p50);
    expect(Math.abs(numberAt(reasons, 'V_snap') - numberAt(explain(), 'V_snap'))).toBeGreaterThan(1);
  });

  it('carry what the forecast has of the evidence', () => {
    expect(reasons.evidence).not.toBeNull();
    expect(reasons.evidence).toEqual(forecast.evidence);
  });

  it('weigh rot pace by what is left of its range after the readings', () => {
    const paceOf = ({ bars }: typeof reasons.sensitivity) => bars.find(({ input }) => input === 'rot pace')!;
    const { sensitivity } = reasons;
    expect(sensitivity.baseline.yearsAhead).toBeLessThan(explain().sensitivity.baseline.yearsAhead!);
    expect(paceOf(sensitivity).swingYears).toBeLessThan(0.7 * paceOf(explain().sensitivity).swingYears);
    expect(paceOf(sensitivity).swingYears).not.toBe(paceOf(sensitivityOf(seen, 2027, DEFAULT_SETTINGS)).swingYears);
  });

  it('leave the sensitivity of a fence of which nothing was seen as it is, and say that there is no evidence', () => {
    expect(explain().sensitivity).toEqual(sensitivityOf(EXAMPLE_FENCE, 2027, DEFAULT_SETTINGS));
    expect(explain().evidence).toBeNull();
  });

  it('name the acceptance that changed the priors, and none of other wood', () => {
    const learned = (treatmentClass: 'ground-contact' | 'heavy-duty') =>
      explainForecast(
        {
          ...EXAMPLE_FENCE,
          learned: { version: 3, paces: [{ treatmentClass, logShift: 0.3, spread: 0.4 }], footing: null },
        },
        2027,
        DEFAULT_SETTINGS,
      );
    expect(learned('ground-contact').learnedVersion).toBe(3);
    expect(learned('ground-contact').sensitivity.baseline.yearsAhead).toBeLessThan(
      explain().sensitivity.baseline.yearsAhead!,
    );
    expect(learned('heavy-duty').learnedVersion).toBeNull();
  });

  it('name the acceptance where footings were learned, whatever the wood', () => {
    const footing = { logShift: -0.1, spread: 0.3 };
    const other = { treatmentClass: 'heavy-duty', logShift: 0.3, spread: 0.4 } as const;
    const version = (learned: FenceFacts['learned']): number | null => learnedVersion({ ...EXAMPLE_FENCE, learned });
    expect(version({ version: 4, paces: [], footing })).toBe(4);
    expect(version({ version: 4, paces: [other], footing: null })).toBeNull();
    expect(version({ version: 4, paces: [other, { ...other, treatmentClass: 'ground-contact' }], footing: null })).toBe(
      4,
    );
    expect(version(null)).toBeNull();
  });
});
