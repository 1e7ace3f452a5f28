import {
  allowableRailConnectionForce,
  referenceWithdrawal,
  usualRailConnection,
} from '../../src/capacity/rail-connection.ts';
import { fenceStates } from '../../src/forecast/fence-state.ts';
import { lbfFromNewtons } from '../../src/units/force.ts';
import { mmFromInches } from '../../src/units/length.ts';
import { anchorFence } from './anchor-fence.ts';
import { type PublishedCheck, within, withinAbsolute } from './published-check.ts';
import { SOURCES } from './sources.ts';

/** True where a post found so far out of plumb counts as leaning. */
function countsAsLeaning(leanDegrees: number): boolean {
  const reading = {
    post: 3,
    groundline: null,
    cavityMm: null,
    leanDegrees,
    collarCracked: null,
    railConnection: null,
    trimmerCutMm: null,
    closedOff: false,
  };
  const inspection = { ref: 'I-1', day: '2005-01-01', method: 'level', readings: [reading] } as const;
  const { state } = fenceStates({ ...anchorFence(), inspections: [inspection] }).at(-1)!;
  return state.posts.find((post) => post.number === 3)!.condition.leaning;
}

/** Lean from which a post counts as leaning [deg], by bisection. */
function leaningFrom(): number {
  let low = 0;
  let high = 45;
  for (let i = 0; i < 40; i += 1) {
    const middle = (low + high) / 2;
    if (countsAsLeaning(middle)) high = middle;
    else low = middle;
  }
  return high;
}

const nail = (penetrationIn: number): number =>
  lbfFromNewtons(
    referenceWithdrawal({
      ...usualRailConnection('southern-pine'),
      penetrationMm: mmFromInches(penetrationIn),
    }),
  );
const railLbf = (state: number, moisture: 'cyclic' | 'dry'): number =>
  lbfFromNewtons(allowableRailConnectionForce(usualRailConnection('southern-pine'), state, { moisture }));

const nails = { topic: 'Rail connections', source: SOURCES.nails, tag: 'read' } as const;

export const FOUND_FACT_CHECKS: readonly PublishedCheck[] = [
  {
    id: 'lean.fifteen',
    topic: 'Rules of places',
    quantity: 'lean from which a post counts as leaning ("more than 15 degrees")',
    computed: leaningFrom,
    published: 15,
    unit: 'deg',
    tolerance: withinAbsolute(1e-6),
    source: SOURCES.arlington,
    tag: 'read',
  },
  {
    ...nails,
    id: 'rail.nail.inch',
    quantity: 'withdrawal of a 16d common nail (0.162 in) from southern pine, each inch',
    computed: () => nail(1),
    published: 50.15,
    unit: 'lbf',
    tolerance: within(0.0005),
  },
  {
    ...nails,
    id: 'rail.nail',
    quantity: 'withdrawal of a 16d common nail, 2.5 in deep',
    computed: () => nail(2.5),
    published: 125,
    unit: 'lbf',
    tolerance: within(0.005),
  },
  ...(
    [
      ['dry', 2140],
      ['cyclic', 535],
    ] as const
  ).map(
    ([moisture, published]): PublishedCheck => ({
      topic: 'Rail connections',
      source: SOURCES.secondWind,
      tag: 'derived',
      id: `rail.post-force.${moisture}`,
      quantity: `post force at strength level that two 16d nails a rail end allow, ASD, ${moisture === 'dry' ? 'dry' : 'wetting and drying'}`,
      computed: () => railLbf(1, moisture) / 0.6,
      published,
      unit: 'lbf',
      tolerance: within(0.005),
    }),
  ),
];
