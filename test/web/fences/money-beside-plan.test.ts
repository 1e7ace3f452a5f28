import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PlanContent } from '../../../src/register/plan-store.ts';
import { storePlan } from '../../../src/register/plan-store.ts';
import { planBesideMoney } from '../../../src/service/plan-beside-money.ts';
import { answeringSample } from '../owner/answering-sample.ts';

const ASKED = { today: '2026-11-24', plans: true };
const POST_SWAP = { kind: 'post-swap' as const, posts: [1], postCount: 1 };

const content = (parts: Pick<PlanContent, 'visits' | 'unservedOthers'>): PlanContent => ({
  risk: {} as PlanContent['risk'],
  stages: [],
  method: {} as PlanContent['method'],
  safetyTimeStruck: false,
  promised: [],
  brokenPromises: [],
  unservedMusts: [],
  hours: [],
  ...parts,
});

describe('a fence that money says to replace now', () => {
  let sample: Awaited<ReturnType<typeof answeringSample>>;
  beforeAll(async () => {
    sample = await answeringSample();
    await sample.register.db
      .updateTable('fences')
      .set({ installed_earliest: '1999-03-20', installed_latest: '1999-03-20' })
      .where('ref', 'in', ['PR-02', 'PR-03'])
      .execute();
  });
  afterAll(() => sample.close());

  it('says on its page what its visit does and why, with the price for the office alone', async () => {
    const html = await sample.text('/fences/PR-02');
    expect(html).toContain(
      'The season plan suggests post swap, posts 2, 5 at 520 USD, on January 12, 2027. It goes by what may break in the coming season',
    );
    const cookie = await sample.signIn({ name: 'pelican', role: 'board', siteRefs: ['PELICAN'] });
    const board = await (await sample.pages.request('/fences/PR-02', { headers: { cookie } })).text();
    expect(board).toContain('The season plan suggests post swap, posts 2, 5, on January 12, 2027.');
  });

  it('tells its age to a tenth, as the facts do', async () => {
    const html = await sample.text('/fences/PR-02');
    expect(html).toContain('Its rails and boards are worn out');
    expect(html).toMatch(/<dt>Its age then<\/dt><dd>\d+\.\d years<\/dd>/);
    expect(html).toMatch(/fence age \d+\.\d years in season/);
  });

  it('is silent where nothing is said to be replaced now', async () => {
    await sample.register.db
      .updateTable('fences')
      .set({ installed_earliest: '2024-03-20', installed_latest: '2024-03-20' })
      .where('ref', '=', 'SK-01')
      .execute();
    const html = await sample.text('/fences/SK-01');
    expect(html).toContain('id="money"');
    expect(html).not.toContain('what may break in the coming season');
  });

  it('goes by the newest plan where no visit is there: mended, left out, rebuilt, not known', async () => {
    const { register } = sample;
    const of = (ref: string, plans = true) => planBesideMoney(register, ref, { ...ASKED, plans });
    expect(await of('PR-03')).toEqual({ kind: 'not known' });
    const store = (parts: Parameters<typeof content>[0]) =>
      storePlan(register.db, {
        madeAt: '2026-11-24T12:00:00.000Z',
        asOf: '2026-11-24',
        firstWeek: '2026-11-30',
        weeks: 12,
        modelVersion: 'test',
        content: content(parts),
      });
    const visit = (
      works: readonly { kind: 'post-swap' | 'rebuild'; posts: readonly number[]; postCount: number }[],
    ) => ({
      week: '2026-11-30',
      crewRef: 'north',
      siteRef: 'PELICAN',
      travelPersonHours: 1,
      items: [{ fenceRef: 'PR-03', optionKey: 'x', works, personHours: 2, price: 260, mustRank: 0 as const }],
    });
    await store({ visits: [visit([POST_SWAP])] });
    expect(await of('PR-03')).toEqual({ kind: 'mends', works: [POST_SWAP], price: 260, day: null });
    expect(await of('PR-03', false)).toEqual({ kind: 'not known' });
    await store({ visits: [visit([{ kind: 'rebuild', posts: [], postCount: 9 }])] });
    expect(await of('PR-03')).toEqual({ kind: 'rebuilds' });
    const number = await store({
      visits: [],
      unservedOthers: [{ reason: 'nothing-to-do', fences: 1, named: [{ jobRef: 'PR-03', reason: 'nothing-to-do' }] }],
    });
    expect(await of('PR-03')).toEqual({ kind: 'left out', plan: number });
    expect(await sample.text('/fences/PR-03')).toContain(`Season plan ${number} does nothing there.`);
  });
});
