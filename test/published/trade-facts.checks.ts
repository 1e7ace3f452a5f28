import { COLLAR_TENSION_MPA, collarForce } from '../../src/capacity/collar.ts';
import { postLoads } from '../../src/capacity/post-load.ts';
import { medianBendingStrength } from '../../src/capacity/wood-strength.ts';
import { lbfFromNewtons } from '../../src/units/force.ts';
import { inchesFromMm, metresFromFeet, mmFromInches } from '../../src/units/length.ts';
import { lineOverYears, newSpeedsMph, yearsUntil } from './anchor-fence.ts';
import { EXACT, type PublishedCheck, withinAbsolute } from './published-check.ts';
import { bendingForceN, POST_4X4, REFERENCE_ARM_M, REFERENCE_RUN, shellLoss } from './reference-fence.ts';
import { SOURCES } from './sources.ts';

const trade = { topic: 'Trade facts', source: SOURCES.trade, tag: 'common practice, no source' } as const;
const verdict = { ...trade, unit: '-', tolerance: EXACT } as const;

const ends = (mph: { readonly snap: number; readonly lean: number }): string =>
  `snaps at ${mph.snap.toFixed(0)} mph, leans at ${mph.lean.toFixed(0)} mph`;

/** Snap and lean speed of the new anchor fence after an inch of sound wood has gone all round [mph]. */
function afterAnInch(): { readonly snap: number; readonly lean: number } {
  const { snap, lean } = newSpeedsMph();
  const share = bendingForceN('best', shellLoss(1)) / bendingForceN('best');
  return { snap: snap * Math.sqrt(share), lean };
}

const leanRatio = (): number => newSpeedsMph({ embedmentIn: 36 }).lean / newSpeedsMph({ embedmentIn: 24 }).lean;

/** Median strength of a new cedar post over a new pine post [-], and of the gusts that snap them. */
const cedarShare = (): number =>
  medianBendingStrength('western-redcedar', 'no-2', POST_4X4) /
  medianBendingStrength('southern-pine', 'no-2', POST_4X4);

const ringForceN = (diameterIn: number): number =>
  collarForce(
    {
      diameterM: mmFromInches(diameterIn) / 1000,
      postBreadthM: mmFromInches(3.5) / 1000,
      depthM: metresFromFeet(2),
      armM: REFERENCE_ARM_M,
    },
    COLLAR_TENSION_MPA,
  );

/** Thickness of concrete at the corners of a 4x4 in a round hole [in]. */
const cornerCoverIn = (diameterIn: number): number => (diameterIn - inchesFromMm(Math.hypot(88.9, 88.9))) / 2;

/** Load on a middle post of 5/4 x 6 boards (5.5 in) set half an inch apart, over the load without gaps [-]. */
function gapShare(): number {
  const solidity = 5.5 / 6;
  const gapped = postLoads({ ...REFERENCE_RUN, solidity })[5]!.caseAM;
  return gapped / postLoads(REFERENCE_RUN)[5]!.caseAM;
}

const halfStrengthYears = (): number =>
  yearsUntil(lineOverYears({ treatmentClass: 'above-ground-stock' }, 'at the medians').strengthLeft, 1 / 2);

export const TRADE_FACT_CHECKS: readonly PublishedCheck[] = [
  {
    ...trade,
    id: 'trade.ten-years',
    quantity: 'treated 4x4 (above-ground stock) in a hot, wet climate: years to half its strength ("about ten")',
    computed: halfStrengthYears,
    published: 10.5,
    unit: 'a',
    tolerance: withinAbsolute(0.5),
  },
  {
    ...verdict,
    id: 'trade.new-leans',
    quantity: 'new treated 4x4, two feet deep in a nine-inch footing',
    computed: () => {
      const { snap, lean } = newSpeedsMph();
      return lean < snap ? 'leans before it snaps' : 'snaps before it leans';
    },
    published: 'leans before it snaps',
    detail: () => ends(newSpeedsMph()),
  },
  {
    ...verdict,
    id: 'trade.old-snaps',
    quantity: 'the same with about an inch of sound wood gone all round',
    computed: () => {
      const { snap, lean } = afterAnInch();
      return lean < snap ? 'leans before it snaps' : 'snaps before it leans';
    },
    published: 'snaps before it leans',
    detail: () => ends(afterAnInch()),
  },
  {
    ...verdict,
    id: 'trade.three-feet',
    quantity: 'lean speed three feet deep against two (markedly: a quarter more, half more in force)',
    computed: () => (leanRatio() >= 1.25 ? 'holds markedly more' : 'holds about the same'),
    published: 'holds markedly more',
    detail: () => `${leanRatio().toFixed(2)} times in speed`,
  },
  {
    ...trade,
    id: 'trade.end-half',
    quantity: 'load on an end post over an interior post under even wind (Case A)',
    computed: () => {
      const loads = postLoads(REFERENCE_RUN);
      return loads[0]!.caseAM / loads[5]!.caseAM;
    },
    published: 0.5,
    unit: '-',
    tolerance: withinAbsolute(0.02),
  },
  {
    ...verdict,
    id: 'trade.cedar',
    quantity: 'cedar posts against treated pine (a good deal: under 0.8 of the strength)',
    computed: () => (cedarShare() < 0.8 ? 'a good deal weaker' : 'about as strong'),
    published: 'a good deal weaker',
    detail: () =>
      `${cedarShare().toFixed(2)} of the strength; snaps at ${newSpeedsMph({ species: 'western-redcedar' }).snap.toFixed(0)} against ${newSpeedsMph().snap.toFixed(0)} mph`,
  },
  ...[6, 7].map(
    (inches): PublishedCheck => ({
      ...verdict,
      id: `trade.thin-ring.${inches}`,
      quantity: `concrete ring of a ${inches} in hole round a sound 4x4`,
      computed: () => (ringForceN(inches) < bendingForceN('best') ? 'weaker than the post' : 'stronger than the post'),
      published: 'weaker than the post',
      detail: () =>
        `${lbfFromNewtons(ringForceN(inches)).toFixed(0)} against ${lbfFromNewtons(bendingForceN('best')).toFixed(0)} lbf; ${cornerCoverIn(inches).toFixed(2)} in of concrete at the corners`,
    }),
  ),
  {
    ...verdict,
    id: 'trade.half-inch-gap',
    quantity: 'half-inch gaps between 5/4 boards (hardly: less than 5 % of the load)',
    computed: () => (1 - gapShare() < 0.05 ? 'hardly change the load' : 'change the load'),
    published: 'hardly change the load',
    detail: () => `${gapShare().toFixed(3)} of the load`,
  },
];
