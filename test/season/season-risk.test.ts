import { describe, expect, it } from 'vitest';
import type { PlannedVisit } from '../../src/season/plan/season-plan.ts';
import { seasonRisk } from '../../src/season/season-risk.ts';
import { inspectOf, plannedFence, worksOf } from './made-up-planned-fence.ts';

const SWAP = worksOf(['post-swap'], { mends: [3], standing: 'clear' });
const fence = (fenceRef: string, parts: Parameters<typeof plannedFence>[0] = {}) =>
  plannedFence({ ...parts, candidates: { fenceRef, candidates: [SWAP, inspectOf()], ...parts.candidates } });
const visit = (week: string, ...chosen: readonly (readonly [jobRef: string, optionKey: string])[]): PlannedVisit => ({
  week,
  crewRef: 'c',
  siteRef: 'S',
  travelPersonHours: 0,
  travelCost: 0,
  items: chosen.map(([jobRef, optionKey]) => ({
    jobRef,
    optionKey,
    personHours: 6,
    cost: 300,
    benefit: 700,
    mustRank: 0,
    promised: false,
  })),
});

describe('the risk of a season', () => {
  it('is the same before and after where nothing is done', () => {
    // each fence: 200 expected of a snap that costs 5,000
    const risk = seasonRisk([fence('A'), fence('B')], []);
    expect(risk).toMatchObject({ counted: 2, withoutCurve: 0, lossBefore: 400, lossAfter: 400 });
    expect(risk.snapsBefore).toBeCloseTo(0.08, 12);
    expect(risk.snapsAfter).toBeCloseTo(0.08, 12);
  });

  it('falls by what the chosen works take off this season, at the fence they are done at', () => {
    const risk = seasonRisk([fence('A'), fence('B')], [visit('2027-05-10', ['B', 'post-swap'])]);
    expect(risk).toMatchObject({ lossBefore: 400, lossAfter: 400 - 150 });
    expect(risk.snapsAfter).toBeCloseTo(250 / 5000, 12);
  });

  it('counts works in full whichever week they are done in', () => {
    const early = seasonRisk([fence('A')], [visit('2027-05-10', ['A', 'post-swap'])]);
    expect(seasonRisk([fence('A')], [visit('2027-09-06', ['A', 'post-swap'])])).toEqual(early);
  });

  it('weighs each fence by what its own snap costs', () => {
    const dear = fence('B', { candidates: { terms: { snapLoss: 20_000, yearlyDiscountRate: 0.04 } } });
    expect(seasonRisk([fence('A'), dear], []).snapsBefore).toBeCloseTo(0.04 + 0.01, 12);
  });

  it('takes nothing off for an inspection, nor for works that are not among the candidates', () => {
    const nothing = seasonRisk([fence('A')], []);
    expect(seasonRisk([fence('A')], [visit('2027-05-10', ['A', 'inspect'])])).toEqual(nothing);
    expect(seasonRisk([fence('A')], [visit('2027-05-10', ['A', 'rebuild'])])).toEqual(nothing);
    expect(seasonRisk([fence('A')], [visit('2027-05-10', ['B', 'post-swap'])])).toEqual(nothing);
  });

  it('counts a fence once where it or its ends are short, and not where the works end that for both', () => {
    const fences = [
      fence('A', { candidates: { standing: 'short', endsStanding: 'short' } }),
      fence('B', { candidates: { standing: 'clear', endsStanding: 'short from new' } }),
      fence('C', { candidates: { standing: 'closing' } }),
    ];
    expect(seasonRisk(fences, [])).toMatchObject({ shortBefore: 2, shortAfter: 2 });
    expect(seasonRisk(fences, [visit('2027-05-10', ['A', 'post-swap'])])).toMatchObject({
      shortBefore: 2,
      shortAfter: 1,
    });
    const halfDone = fence('A', {
      candidates: { standing: 'short', endsStanding: 'short', candidates: [{ ...SWAP, endsStanding: 'short' }] },
    });
    expect(seasonRisk([halfDone], [visit('2027-05-10', ['A', 'post-swap'])]).shortAfter).toBe(1);
  });

  it('counts a fence as dangerous until every such post is mended', () => {
    const one = [fence('A', { dangerPosts: [3] })];
    const two = [fence('A', { dangerPosts: [3, 5] })];
    const done = [visit('2027-05-10', ['A', 'post-swap'])];
    expect(seasonRisk(one, [])).toMatchObject({ dangerousBefore: 1, dangerousAfter: 1 });
    expect(seasonRisk(one, done)).toMatchObject({ dangerousBefore: 1, dangerousAfter: 0 });
    expect(seasonRisk(two, done)).toMatchObject({ dangerousBefore: 1, dangerousAfter: 1 });
  });

  it('leaves out of its sums what has no hazard curve, and still counts its standing and its danger', () => {
    const blind = fence('B', { dangerPosts: [3], candidates: { loss: null, standing: 'short' } });
    expect(seasonRisk([fence('A'), blind], [visit('2027-05-10', ['B', 'post-swap'])])).toEqual({
      counted: 1,
      withoutCurve: 1,
      snapsBefore: 200 / 5000,
      snapsAfter: 200 / 5000,
      lossBefore: 200,
      lossAfter: 200,
      shortBefore: 1,
      shortAfter: 0,
      dangerousBefore: 1,
      dangerousAfter: 0,
    });
  });
});
