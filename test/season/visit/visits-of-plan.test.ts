import { expect, it } from 'vitest';
import type { PlannedVisit, VisitItem } from '../../../src/season/plan/season-plan.ts';
import { visitsOfPlan } from '../../../src/season/visit/visits-of-plan.ts';
import { inspectOf, plannedFence, worksOf } from '../made-up-planned-fence.ts';

const FENCES = new Map(
  ['A', 'B', 'C'].map((fenceRef) => [
    fenceRef,
    plannedFence({
      candidates: { fenceRef, candidates: [worksOf(['post-swap', 'liner']), inspectOf({ posts: [3, 7] })] },
    }),
  ]),
);
const item = (jobRef: string, parts: Partial<VisitItem> = {}): VisitItem => ({
  jobRef,
  optionKey: 'post-swap + liner',
  personHours: 6,
  cost: 300,
  benefit: 700,
  mustRank: 3,
  promised: false,
  ...parts,
});
const visit = (items: readonly VisitItem[]): PlannedVisit => ({
  week: '2027-05-03',
  crewRef: 'north',
  siteRef: 'S',
  travelPersonHours: 1.5,
  travelCost: 60,
  items,
});

it('the visits of a plan say what is done at each fence, in order, at which posts', () => {
  expect(visitsOfPlan([visit([item('A'), item('B', { optionKey: 'inspect', mustRank: 0 })])], FENCES)).toEqual([
    {
      week: '2027-05-03',
      crewRef: 'north',
      siteRef: 'S',
      travelPersonHours: 1.5,
      items: [
        {
          fenceRef: 'A',
          optionKey: 'post-swap + liner',
          works: [
            { kind: 'post-swap', posts: [1, 2], postCount: 2 },
            { kind: 'liner', posts: [1, 2], postCount: 2 },
          ],
          personHours: 6,
          price: 300,
          mustRank: 3,
        },
        {
          fenceRef: 'B',
          optionKey: 'inspect',
          works: [{ kind: 'inspect', posts: [3, 7], postCount: 2 }],
          personHours: 6,
          price: 300,
          mustRank: 0,
        },
      ],
    },
  ]);
});

it('fences on promised dates have visits of their own, and a visit of none but such is not the plan’s', () => {
  const promised = item('A', { promised: true });
  expect(visitsOfPlan([visit([promised])], FENCES)).toEqual([]);
  expect(visitsOfPlan([visit([promised, item('C')])], FENCES)).toMatchObject([{ items: [{ fenceRef: 'C' }] }]);
});
