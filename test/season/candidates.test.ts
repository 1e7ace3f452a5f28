import { describe, expect, it } from 'vitest';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { DEFAULT_SETTINGS } from '../../src/forecast/forecast-fence.ts';
import {
  type FenceCandidates,
  fenceCandidates,
  type InspectCandidate,
  type WorksCandidate,
} from '../../src/season/candidates.ts';
import { expectedLoss } from '../../src/season/expected-loss.ts';
import { fenceOutlook, risksAfter } from '../../src/season/fence-outlook.ts';
import type { FenceConsequence } from '../../src/season/snap-consequence.ts';
import { SHIPPED_CATALOGUE } from '../../src/season/works-catalogue.ts';
import { groundlineOf, halfMillimetreFence, inspectionOn } from '../forecast/evidence/read-fence.ts';
import { EXAMPLE_FENCE, PINE_4X4 } from '../forecast/example-fence.ts';

const DAY = '2026-02-01';
const CALENDAR = { today: DAY, opensOn: '2026-03-01', frozen: null };
const outlookOf = (facts: FenceFacts) => fenceOutlook(facts, DEFAULT_SETTINGS, DAY, 2026);
const of = (facts: FenceFacts, consequence: FenceConsequence = 'ordinary'): FenceCandidates =>
  fenceCandidates({ outlook: outlookOf(facts), catalogue: SHIPPED_CATALOGUE, consequence, calendar: CALENDAR });
const worksOf = ({ candidates }: FenceCandidates): readonly WorksCandidate[] =>
  candidates.flatMap((each) => (each.kind === 'works' ? [each] : []));
const keyed = (all: FenceCandidates, key: string): WorksCandidate => worksOf(all).find((each) => each.key === key)!;
const inspectOf = ({ candidates }: FenceCandidates): InspectCandidate => {
  const found = candidates.find((each) => each.kind === 'inspect');
  if (found?.kind !== 'inspect') throw new Error('no inspection');
  return found;
};

/** A fence of middle age on a calm site, of which little is known: whether to do anything is a near thing. */
const DOUBTFUL: FenceFacts = {
  ...EXAMPLE_FENCE,
  installed: { earliest: '2012-03-01', latest: '2012-03-01' },
  wood: { ...PINE_4X4, treatmentClass: 'unknown-treated' },
  site: { ...EXAMPLE_FENCE.site, wind: { ...EXAMPLE_FENCE.site.wind, speedMps: 41 } },
};
const doubtful = of(DOUBTFUL);
const example = of(EXAMPLE_FENCE);

describe('candidates', () => {
  it('drop the expected loss by what it is with them, point by point on the same belief', () => {
    const outlook = outlookOf(EXAMPLE_FENCE);
    const before = expectedLoss(outlook.risks, example.terms)!;
    const swap = keyed(example, 'post-swap');
    const after = expectedLoss(risksAfter(outlook, swap.option.works), example.terms)!;
    expect(swap.drop!.thisSeason).toBeCloseTo(before.thisSeason - after.thisSeason, 9);
    expect(swap.drop!.toHorizon).toBeCloseTo(before.toHorizon - after.toHorizon, 9);
    expect(swap.netBenefit).toBeCloseTo(before.toHorizon - after.toHorizon - swap.cost.price, 9);
    expect(example.loss).toEqual({ thisSeason: before.thisSeason, toHorizon: before.toHorizon });
  });

  it('gain nothing by doing nothing', () => {
    const outlook = outlookOf(EXAMPLE_FENCE);
    expect(expectedLoss(risksAfter(outlook, []), example.terms)).toEqual(expectedLoss(outlook.risks, example.terms));
  });

  it.each([
    ['the example fence', EXAMPLE_FENCE],
    [
      'a fence that was read',
      { ...halfMillimetreFence(18), inspections: [inspectionOn('2025-04-20', [{ kind: 'depth', depthMm: 9 }])] },
    ],
    ['a doubtful fence', DOUBTFUL],
  ])('never make %s worse by treating it, sleeving it or setting it new', (_, facts) => {
    for (const { key, drop } of worksOf(of(facts))) {
      expect(drop!.thisSeason, key).toBeGreaterThanOrEqual(-1e-9);
      expect(drop!.toHorizon, key).toBeGreaterThanOrEqual(-1e-9);
      expect(drop!.ifLate, key).toBeLessThanOrEqual(drop!.toHorizon + 1e-9);
    }
  });

  it('are worth more where more hangs on the fence', () => {
    const pool = of(EXAMPLE_FENCE, 'pool-barrier');
    const scale = pool.terms.snapLoss / example.terms.snapLoss;
    expect(scale).toBeGreaterThan(2);
    expect(keyed(pool, 'post-swap').drop!.toHorizon).toBeCloseTo(
      keyed(example, 'post-swap').drop!.toHorizon * scale,
      6,
    );
  });

  it('say what would change the standing, and what they mend', () => {
    const old: FenceFacts = {
      ...EXAMPLE_FENCE,
      installed: { earliest: '2003-03-01', latest: '2003-03-01' },
      inspections: [
        {
          ref: 'I',
          day: '2026-01-10',
          method: 'eye',
          readings: [groundlineOf(5, { kind: 'broken' }), { ...groundlineOf(7, null), leanDegrees: 20 }],
        },
      ],
    };
    const all = of(old);
    expect(all.standing).toBe('short');
    expect(keyed(all, 'post-swap')).toMatchObject({ standing: 'clear', changesStanding: true, mends: [5, 7] });
    expect(worksOf(all).find(({ key }) => key.startsWith('groundline-treatment'))).toMatchObject({
      standing: 'short',
      changesStanding: false,
      mends: [],
    });
    expect(keyed(all, 'footing-reset').mends).toEqual([7]);
    expect(keyed(all, 'post-swap').fewerPostsShort).toBeGreaterThan(1);
  });

  it('mend a post that was only closed off where it is set anew', () => {
    const closedOff: FenceFacts = {
      ...EXAMPLE_FENCE,
      inspections: [
        { ref: 'I', day: '2026-01-10', method: 'eye', readings: [{ ...groundlineOf(7, null), closedOff: true }] },
      ],
    };
    const all = of(closedOff);
    expect(keyed(all, 'post-swap at 7').mends).toEqual([7]);
    expect(keyed(all, 'rebuild').mends).toEqual([7]);
    expect(keyed(all, 'added-posts').mends).toEqual([]);
  });

  it('carry their window and the office what the law may ask', () => {
    expect(keyed(example, 'rebuild').window).toMatchObject({
      fromDay: '2026-02-04',
      latestDay: '2026-02-22',
      permit: true,
    });
    expect(inspectOf(example).window).toMatchObject({ fromDay: DAY, latestDay: '2026-02-28', inTime: true });
  });

  it('price nothing where the site has no curve, and still say what changes the standing', () => {
    const { site } = EXAMPLE_FENCE;
    const all = of({ ...EXAMPLE_FENCE, site: { ...site, wind: { ...site.wind, hurricane: true } } });
    expect(all.loss).toBeNull();
    expect(inspectOf(all)).toMatchObject({ evsi: null, evpi: null, netBenefit: null, advice: [] });
    for (const { drop, netBenefit, standing } of worksOf(all)) {
      expect([drop, netBenefit]).toEqual([null, null]);
      expect(standing).toBeTruthy();
    }
  });
});

describe('looking first', () => {
  it('is worth something where the reading decides, and less than knowing all', () => {
    const look = inspectOf(doubtful);
    expect(look.evsi!).toBeGreaterThan(0);
    expect(look.evsi!).toBeLessThanOrEqual(look.evpi!);
    expect(look.netBenefit).toBeCloseTo(look.evsi! - look.cost.price, 9);
    const bestNow = Math.max(0, ...worksOf(doubtful).map(({ netBenefit }) => netBenefit!));
    expect(look.netBenefitWithWorks).toBeCloseTo(bestNow + look.netBenefit!, 6);
  });

  it('advises by the mean depth, over all depths there are, doing more where it is deeper', () => {
    const { advice } = inspectOf(doubtful);
    expect(advice.length).toBeGreaterThan(1);
    expect(advice[0]!.fromMm).toBeNull();
    expect(advice.at(-1)!.toMm).toBeNull();
    for (const [index, { fromMm }] of advice.entries()) if (index > 0) expect(fromMm).toBe(advice[index - 1]!.toMm);
    expect(advice.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 9);
    const priceOf = (key: string | null): number => (key === null ? 0 : keyed(doubtful, key).cost.price);
    expect(priceOf(advice.at(-1)!.best)).toBeGreaterThan(priceOf(advice[0]!.best));
  });

  it('is worth nothing where one thing is best whatever is read', () => {
    const sound: FenceFacts = {
      ...EXAMPLE_FENCE,
      wood: { ...PINE_4X4, treatmentClass: 'does-not-rot', momentCapacityNm: 20_000 },
    };
    const look = inspectOf(of(sound));
    expect(look.evsi).toBe(0);
    expect(look.advice).toHaveLength(1);
    expect(look.advice[0]!.best).toBeNull();
  });

  it('reads posts the fence is judged by, eight at most, and none that is broken', () => {
    const broken: FenceFacts = {
      ...EXAMPLE_FENCE,
      inspections: [{ ref: 'I', day: '2026-01-10', method: 'eye', readings: [groundlineOf(5, { kind: 'broken' })] }],
    };
    expect(inspectOf(example).posts).toEqual([4, 5, 6, 7, 8]);
    expect(inspectOf(of(broken)).posts).toEqual([4, 6, 7, 8]);
    const long = { ...EXAMPLE_FENCE, run: { ...EXAMPLE_FENCE.run, runLengthM: 60 } };
    expect(inspectOf(of(long)).posts).toHaveLength(8);
  });
});
