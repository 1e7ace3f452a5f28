import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { upsertRecords } from '../../src/register/record-store.ts';
import { cents, NO_MONEY } from '../../src/season/money/money.ts';
import { type OwnerMoney, type OwnerMoneyRequest, ownerMoney } from '../../src/service/owner-money.ts';
import { SAMPLE_NOW, sampleRegister } from '../web/sample-register.ts';

describe('the money of an owner', () => {
  let sample: Awaited<ReturnType<typeof sampleRegister>>;
  beforeAll(async () => {
    sample = await sampleRegister({ swept: false });
  });
  afterAll(() => sample.remove());

  const ask = (ownerRef: string, change: Partial<OwnerMoneyRequest> = {}) =>
    ownerMoney(sample.register, {
      ownerRef,
      years: 20,
      openingBalance: NO_MONEY,
      contribution: { kind: 'find', course: 'flat', cover: 'expected' },
      inflation: 0.03,
      interest: 0.02,
      floor: NO_MONEY,
      dependence: 'independent',
      rule: 'cheapest',
      longestServiceYears: 25,
      inspectEveryYears: 5,
      sharedPart: 0.5,
      now: SAMPLE_NOW,
      onProgress: () => undefined,
      ...change,
    });
  const plannedFor = async (ownerRef: string, change: Partial<OwnerMoneyRequest> = {}): Promise<OwnerMoney> => {
    const result = await ask(ownerRef, change);
    if (result.kind !== 'planned') throw new Error(result.kind);
    return result;
  };

  it('plans every fence of an association, from the next season on', async () => {
    const counts: string[] = [];
    const { plan, fences, unseen, owner } = await plannedFor('HOA', {
      onProgress: (done, total) => counts.push(`${done}/${total}`),
    });
    expect(owner.name).toBe('Pelican Reach Association');
    expect(fences.map(({ ref }) => ref)).toEqual(['PR-01', 'PR-02', 'PR-03', 'PR-05', 'PR-06']);
    expect(plan.fences.map(({ ref }) => ref)).toEqual(fences.map(({ ref }) => ref));
    expect(fences.every(({ responsible, share }) => responsible === 'association' && share === 1)).toBe(true);
    expect(plan.payer).toBe('association');
    // In late November the season of 2026 is nearly over: works of today count for that of 2027.
    expect(plan.years[0]!.year).toBe(2027);
    expect(plan.years).toHaveLength(20);
    expect(plan.years.every(({ lowest }) => lowest >= 0)).toBe(true);
    expect(plan.years.some(({ spending, repairs }) => spending > repairs && repairs > 0)).toBe(true);
    expect(unseen).toEqual([]);
    expect(counts).toEqual(['1/5', '2/5', '3/5', '4/5', '5/5']);
  });

  it('pays its part of a fence with two owners, first and second alike', async () => {
    const whole = await plannedFor('MASON', { sharedPart: 1 });
    const half = await plannedFor('MASON');
    const second = await plannedFor('QUINN');
    expect(half.fences.map(({ ref, share, sharedWith }) => [ref, share, sharedWith])).toEqual([
      ['SK-01', 1, null],
      ['SK-02', 0.5, 'Rosa Quinn'],
    ]);
    const spent = ({ plan }: OwnerMoney, ref: string): number =>
      plan.fences.find((each) => each.ref === ref)!.expectedSpending;
    expect(spent(half, 'SK-01')).toBe(spent(whole, 'SK-01'));
    expect(spent(half, 'SK-02') / spent(whole, 'SK-02')).toBeCloseTo(0.5, 4);
    expect(second.fences.map(({ ref, sharedWith }) => [ref, sharedWith])).toEqual([
      ['PR-04', null],
      ['SK-02', 'Mason Yards'],
    ]);
    expect(second.plan.payer).toBe('lot');
    // What is shown of the fence is the whole of it.
    expect(half.fences[1]!.price).toBe(whole.fences[1]!.price);
  });

  it('begins with the season that runs where one does', async () => {
    // At Skerry the season of November to March is running.
    const { plan, fences } = await plannedFor('QUINN');
    expect(plan.years[0]!.year).toBe(2026);
    expect(fences.find(({ ref }) => ref === 'PR-04')!.cheapestYear).toBeGreaterThanOrEqual(2027);
  });

  it('takes the prices of the office where it has entered any', async () => {
    const before = await plannedFor('HOA');
    const now = '2026-11-24T12:00:00.000Z';
    await upsertRecords(
      sample.register.db,
      'catalogue',
      [
        {
          kind: 'rebuild',
          personHoursFixed: 4,
          personHoursPerPost: 3.5,
          priceFixed: 1000,
          pricePerPost: 500,
          cureDays: 7,
          locateNoticeDays: 3,
          notOnFrozenGround: true,
          licensedApplicator: false,
          permit: true,
          embedmentM: 0.914,
          footing: 'concrete',
          footingDiameterM: 0.254,
          sleeveMomentNm: 4881,
          yearsEffective: 5,
          treatmentClass: 'heavy-duty',
          source: 'price list of the office for these tests',
        },
      ],
      now,
    );
    const after = await plannedFor('HOA');
    await sample.register.db.deleteFrom('catalogue_lines').execute();
    expect(before.fences[0]!.price).toBe(cents(502_000));
    expect(after.fences[0]!.price).toBe(cents(650_000));
  });

  it('knows no such owner, and one without fences', async () => {
    expect(await ask('HOAS')).toEqual({ kind: 'no such owner', nearest: 'HOA' });
    const idle = {
      ref: 'IDLE',
      name: 'Idle',
      kind: 'person',
      channel: 'letter',
      email: null,
      postalAddress: 'Nowhere 1',
    };
    await upsertRecords(
      sample.register.db,
      'owners',
      [{ ...idle, kind: 'person', channel: 'letter', language: 'en', enrolled: false }],
      '2026-11-24T12:00:00.000Z',
    );
    expect(await ask('IDLE')).toMatchObject({ kind: 'no fences', owner: { ref: 'IDLE' } });
  });

  it('refuses terms that do not hold together', async () => {
    await expect(ask('HOA', { years: 9 })).rejects.toThrow(/plan, years: 9; give a whole number from 10 to 30/);
  });
});
