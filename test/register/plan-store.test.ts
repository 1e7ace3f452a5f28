import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import {
  listPlans,
  markAccepted,
  type NewPlan,
  newestPlanNumber,
  readPlan,
  storePlan,
} from '../../src/register/plan-store.ts';
import { sampleRegister } from '../web/sample-register.ts';

const RISK = {
  counted: 1,
  withoutCurve: 0,
  snapsBefore: 0.2,
  snapsAfter: 0.1,
  lossBefore: 900,
  lossAfter: 400,
  shortBefore: 1,
  shortAfter: 0,
  dangerousBefore: 0,
  dangerousAfter: 0,
};
const PLAN: NewPlan = {
  madeAt: '2026-11-24T12:00:00.000Z',
  asOf: '2026-11-24',
  firstWeek: '2026-11-30',
  weeks: 8,
  modelVersion: 'm',
  content: {
    visits: [],
    risk: RISK,
    stages: [],
    method: 'whole',
    safetyTimeStruck: false,
    promised: [],
    brokenPromises: [],
    unservedMusts: [],
    hours: [],
  },
};

describe('season plans in the register', () => {
  let sample: Awaited<ReturnType<typeof sampleRegister>>;
  beforeEach(async () => {
    sample = await sampleRegister({ empty: true });
  });
  afterEach(() => sample.remove());

  it('are numbered as they are made and come back as they were', async () => {
    const { db } = sample.register;
    expect(await newestPlanNumber(db)).toBeNull();
    expect([await storePlan(db, PLAN), await storePlan(db, PLAN)]).toEqual([1, 2]);
    expect(await newestPlanNumber(db)).toBe(2);
    expect(await readPlan(db, 2)).toEqual({ ...PLAN, number: 2, state: 'made', acceptedAt: null, by: '', because: '' });
    expect(await readPlan(db, 3)).toBeNull();
  });

  it('are in force one at a time', async () => {
    const { db } = sample.register;
    for (let count = 0; count < 3; count += 1) await storePlan(db, PLAN);
    const act = { by: 'Nell', because: 'fits', at: '2026-11-24T13:00:00.000Z' };
    await markAccepted(db, 1, act);
    await markAccepted(db, 3, act);
    expect((await listPlans(db)).map(({ state }) => state)).toEqual(['superseded', 'made', 'accepted']);
    expect(await readPlan(db, 3)).toMatchObject({ by: 'Nell', because: 'fits', acceptedAt: act.at });
  });

  it('are never edited', async () => {
    const { db } = sample.register;
    await storePlan(db, PLAN);
    await expect(db.updateTable('season_plans').set({ content: '{}' }).execute()).rejects.toThrow(/never edited/);
  });
});
