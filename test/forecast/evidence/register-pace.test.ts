import { describe, expect, it } from 'vitest';
import { decayDepth } from '../../../src/decay/decay-depth.ts';
import { medianDecayRate, POST_PACE_SPREAD } from '../../../src/decay/decay-rate.ts';
import {
  type FencePaceEvidence,
  fencePaceEvidence,
  registerPace,
} from '../../../src/forecast/evidence/register-pace.ts';
import { poolOffsets } from '../../../src/forecast/evidence/register-pool.ts';
import type { FenceFacts } from '../../../src/forecast/fence-facts.ts';
import { fenceStates } from '../../../src/forecast/fence-state.ts';
import { DAYS_PER_YEAR, dayFromNumber, dayNumber } from '../../../src/units/calendar-day.ts';
import { EXAMPLE_FENCE, PINE_4X4, WARM_SITE } from '../example-fence.ts';
import { normals, readFence } from './made-up-register.ts';
import { inspectionOn } from './read-fence.ts';

const TAU = 0.6;
const BAND = 5;

const evidenceOf = (facts: FenceFacts) => fencePaceEvidence(facts, fenceStates(facts));
const learned = (fences: readonly FenceFacts[]) => registerPace('ground-contact', BAND, fences.flatMap(evidenceOf));

describe('what a register shows of a pace', () => {
  it('is the published pace where nothing was read', () => {
    expect(evidenceOf(EXAMPLE_FENCE)).toEqual([]);
    const none = learned([EXAMPLE_FENCE]);
    expect(none).toMatchObject({ key: `ground-contact/${BAND}`, fences: 0, readings: 0, enough: false });
    expect(none.logShift).toBeCloseTo(0, 12);
    expect(none.spread).toBeCloseTo(TAU, 6);
  });

  it('moves little for a register of one fence', () => {
    const found = learned([readFence('F-1', () => 0, { offset: Math.log(2), years: 16, posts: 3 })]);
    expect(found.logShift).toBeGreaterThan(0.05);
    expect(found.logShift).toBeLessThan(Math.log(2) / 2);
    expect(found.enough).toBe(false);
  });

  it('leaves what the office has accepted out: it is measured against the published pace', () => {
    const facts = readFence('F-1', normals(3), { offset: 0.4, years: 15, posts: 3 });
    const paces = [{ treatmentClass: 'ground-contact', logShift: 0.7, spread: 0.3 } as const];
    const accepted: FenceFacts = { ...facts, learned: { version: 1, paces, footing: null } };
    expect(evidenceOf(accepted)).toEqual(evidenceOf(facts));
  });

  it('keeps classes and bands apart', () => {
    const read = readFence('F-1', normals(4), { offset: 0, years: 15, posts: 3 });
    const swapped: FenceFacts = {
      ...read,
      posts: [
        {
          number: 2,
          positionM: null,
          installed: null,
          wood: { ...PINE_4X4, treatmentClass: 'above-ground-stock' },
          sharedRun: null,
        },
      ],
    };
    expect(evidenceOf(swapped).map(({ treatmentClass, readings }) => [treatmentClass, readings])).toEqual([
      ['above-ground-stock', 1],
      ['ground-contact', 2],
    ]);
    const mild: FenceFacts = { ...read, site: { ...read.site, climate: { kind: 'decay-zone', zone: 2 } } };
    expect(learned([mild]).fences).toBe(0);
    expect(registerPace('ground-contact', 2, evidenceOf(mild)).fences).toBe(1);
  });

  it('says less where the install date is a range', () => {
    const depth = { kind: 'depth', depthMm: 6 } as const;
    const known: FenceFacts = { ...EXAMPLE_FENCE, inspections: [inspectionOn('2026-03-01', Array(8).fill(depth))] };
    const ranged: FenceFacts = { ...known, installed: { earliest: '2008-03-01', latest: '2022-03-01' } };
    const width = (facts: FenceFacts): number => {
      const { low, high } = learned([facts]);
      return high - low;
    };
    expect(width(ranged)).toBeGreaterThan(width(known));
  });
});

describe('what the readings of one fence say of its pace', () => {
  const RATE = (): number => medianDecayRate('ground-contact', WARM_SITE.climate);
  const ages = { known: [14], range: [8.5, 11.5, 14.5, 17.5] } as const;
  const READ_ON = '2026-03-01';
  const daysAgo = (years: number): string => dayFromNumber(dayNumber(READ_ON) - Math.round(years * DAYS_PER_YEAR));
  /** Of each depth the scatter of the posts integrated out, of all together the install date: mean over its levels. */
  const byHand = (offset: number, depths: readonly number[], years: readonly number[]): number => {
    const each = years.map((age) => {
      let product = 1;
      for (const depthMm of depths) {
        let [sum, total] = [0, 0];
        for (let score = -5; score <= 5; score += 0.01) {
          const weight = Math.exp((-score * score) / 2);
          const off = (depthMm - decayDepth(age, RATE() * Math.exp(offset + POST_PACE_SPREAD * score))) / 2;
          sum += weight * Math.exp((-off * off) / 2);
          total += weight;
        }
        product *= sum / total;
      }
      return product;
    });
    return Math.log(each.reduce((a, b) => a + b) / each.length);
  };
  const compare = (facts: FenceFacts, depths: readonly number[], years: readonly number[]): void => {
    const [evidence, ...others] = evidenceOf(facts);
    expect(others).toEqual([]);
    const logs = evidence!.logLikelihoods;
    const offsets = poolOffsets(TAU);
    expect(logs).toHaveLength(offsets.length);
    for (const index of [120, 140, 150, 170, 185, 200]) {
      const wanted = byHand(offsets[index]!, depths, years) - byHand(0, depths, years);
      expect(logs[index]! - logs[160]!).toBeCloseTo(wanted, 1.5);
    }
  };
  const read = (depths: readonly number[], installed: FenceFacts['installed']): FenceFacts => ({
    ...EXAMPLE_FENCE,
    installed,
    inspections: [
      inspectionOn(
        READ_ON,
        depths.map((depthMm) => ({ kind: 'depth', depthMm })),
      ),
    ],
  });

  it('is what integrating by hand gives, where the install date is known', () => {
    const day = daysAgo(14);
    compare(read([9], { earliest: day, latest: day }), [9], ages.known);
    compare(read([9, 4], { earliest: day, latest: day }), [9, 4], ages.known);
  });

  it('is what averaging over four install dates gives, where it is a range: one date for all posts', () => {
    const installed = { earliest: daysAgo(19), latest: daysAgo(7) };
    compare(read([9], installed), [9], ages.range);
    compare(read([9, 4], installed), [9, 4], ages.range);
  });

  it('names the fence, the class, the band and the number of its readings', () => {
    const twice: FenceFacts = {
      ...read([5, 6], { earliest: daysAgo(14), latest: daysAgo(14) }),
      ref: 'F-9',
    };
    const facts = {
      ...twice,
      inspections: [...twice.inspections, inspectionOn('2025-03-01', [{ kind: 'depth', depthMm: 4 }])],
    };
    expect(evidenceOf(facts)).toHaveLength(1);
    expect(evidenceOf(facts)[0]).toMatchObject({
      ref: 'F-9',
      treatmentClass: 'ground-contact',
      climateBand: BAND,
      readings: 3,
    });
  });
});

describe('the pace of a register', () => {
  const flat = (ref: string, readings: number): FencePaceEvidence => ({
    ref,
    treatmentClass: 'ground-contact',
    climateBand: BAND,
    readings,
    logLikelihoods: new Float64Array(321),
  });

  it('is named by its class and band, and takes only fences of both', () => {
    const fences = [
      flat('A', 3),
      { ...flat('B', 5), treatmentClass: 'heavy-duty' as const },
      { ...flat('C', 7), climateBand: 4 as const },
      flat('D', 4),
    ];
    expect(registerPace('ground-contact', BAND, fences)).toMatchObject({
      kind: 'pace',
      key: 'ground-contact/5',
      treatmentClass: 'ground-contact',
      climateBand: BAND,
      fences: 2,
      readings: 7,
      enough: false,
      published: { spread: 0.6 },
    });
    expect(registerPace('heavy-duty', BAND, fences)).toMatchObject({ fences: 1, readings: 5 });
    expect(registerPace('unknown-treated', 2, fences)).toMatchObject({
      fences: 0,
      readings: 0,
      published: { spread: 0.8 },
    });
  });

  it.each([
    [10, 3, true],
    [9, 4, false],
    [10, 2, false],
    [11, 3, true],
  ])('of %s fences with %s readings each is enough: %s', (fences, readings, enough) => {
    const register = Array.from({ length: fences }, (_, i) => flat(`F${i}`, readings));
    expect(registerPace('ground-contact', BAND, register).enough).toBe(enough);
  });
});
