import { FORCE_COEFFICIENT_PROVENANCE, forceCoefficientA } from '../capacity/force-coefficient.ts';
import {
  OPEN_SIGN_PROVENANCE,
  OPENINGS_PROVENANCE,
  openingsFactor,
  openSignCoefficient,
  SOLID_FROM,
} from '../capacity/openings.ts';
import { solidHeight } from '../capacity/post-load.ts';
import {
  CODE_HEIGHT_FLOOR_M,
  DIRECTIONALITY_FACTOR,
  EXPOSURE_PROVENANCE,
  elevationFactor,
  exposureCoefficient,
  exposureConstants,
  GUST_EFFECT_FACTOR,
  VELOCITY_PRESSURE_PROVENANCE,
} from '../capacity/velocity-pressure.ts';
import type { Provenance } from '../units/provenance.ts';
import type { RunFacts } from './fence-facts.ts';
import type { Demand } from './post-demand.ts';
import type { ReasonContext } from './reason-context.ts';
import { RECORDED, type ReasonStep, reasonStep } from './reason-step.ts';

const GEOMETRY: Provenance = { source: 'geometry', tag: 'derived' };
const FACTORS: Provenance = { source: 'ASCE 7-16 Table 26.6-1 (Kd) and 26.11.1 (G)', tag: 'read' };
const ELEVATION: Provenance = { source: 'ASCE 7-16 26.9', tag: 'memory' };
const NO_FLOOR: Provenance = { source: 'Kz at the real height, without the 15 ft floor', tag: 'judgement' };

/** Steps from geometry and exposure to the wind force on the deciding post at 1 m/s. */
export function windSteps({ facts, model, postClass }: ReasonContext): readonly ReasonStep[] {
  const { run } = model.state;
  const { site } = facts;
  const { load, demands, post } = postClass.sample;
  const demand = demands[0]!;
  const solid = solidHeight(run);
  const both = { basis: 'both', group: 'wind' } as const;
  const solidFence = run.solidity >= SOLID_FROM;
  const shape = solidFence
    ? [
        reasonStep(
          both,
          {
            symbol: 'F_eps',
            quantity: 'reduction for openings',
            value: openingsFactor(run.solidity),
            unit: '-',
            equation: '1 - (1 - eps)^1.5',
          },
          OPENINGS_PROVENANCE,
        ),
        reasonStep(
          both,
          {
            symbol: 'Cf,A',
            quantity: 'force coefficient, Case A',
            value: forceCoefficientA(solid / run.heightM, run.runLengthM / solid),
            unit: '-',
            equation: 'table by s/h and B/s',
          },
          FORCE_COEFFICIENT_PROVENANCE,
        ),
        reasonStep(
          both,
          {
            symbol: '(Cf L)_A',
            quantity: 'coefficient x tributary length, Case A, openings included',
            value: load.caseAM,
            unit: 'm',
            equation: 'even load, rails simple between posts',
          },
          FORCE_COEFFICIENT_PROVENANCE,
        ),
        reasonStep(
          both,
          {
            symbol: '(Cf L)_C',
            quantity: 'the same, Case C from the worse end',
            value: load.caseCM,
            unit: 'm',
            equation: 'stepped load, return corners on the first band, B/s >= 2',
          },
          FORCE_COEFFICIENT_PROVENANCE,
        ),
      ]
    : [
        reasonStep(
          both,
          {
            symbol: 'Cf',
            quantity: 'force coefficient on the solid area',
            value: openSignCoefficient(run.solidity),
            unit: '-',
            equation: 'flat-sided members by eps',
          },
          OPEN_SIGN_PROVENANCE,
        ),
      ];
  const { alpha, gradientHeightM } = exposureConstants(site.exposure);
  const constants = `alpha ${alpha}, zg ${gradientHeightM.toFixed(1)} m`;
  const kz = (floorM: number): number => exposureCoefficient(run.heightM, site.exposure, floorM);
  return [
    reasonStep(
      both,
      { symbol: 'h', quantity: 'height', value: run.heightM, unit: 'm', equation: 'geometry' },
      RECORDED,
    ),
    reasonStep(
      both,
      {
        symbol: 's',
        quantity: 'height of the solid part',
        value: solid,
        unit: 'm',
        equation: 'h less a gap above 0.05 h',
      },
      GEOMETRY,
    ),
    reasonStep(
      both,
      {
        symbol: 'B/s',
        quantity: 'run length over solid height',
        value: run.runLengthM / solid,
        unit: '-',
        equation: 'B / s',
      },
      GEOMETRY,
    ),
    reasonStep(
      both,
      {
        symbol: 'eps',
        quantity: 'solidity',
        value: run.solidity,
        unit: '-',
        equation: 'as recorded, else the usual one of the style',
      },
      RECORDED,
    ),
    reasonStep(
      both,
      { symbol: 'B', quantity: 'run length', value: run.runLengthM, unit: 'm', equation: endsText(run) },
      RECORDED,
    ),
    reasonStep(
      both,
      {
        symbol: 'x',
        quantity: 'position of the post from the named end',
        value: post.positionM,
        unit: 'm',
        equation: `posts every ${run.postSpacingM.toFixed(3)} m unless recorded`,
      },
      RECORDED,
    ),
    ...shape,
    reasonStep(
      both,
      {
        symbol: 'Cf L',
        quantity: `governing, case ${load.governingCase}`,
        value: load.governingM,
        unit: 'm',
        equation: solidFence ? 'the larger of A and C' : 'Cf eps L, the solid area only',
      },
      solidFence ? FORCE_COEFFICIENT_PROVENANCE : OPEN_SIGN_PROVENANCE,
    ),
    reasonStep(
      both,
      {
        symbol: 'e',
        quantity: 'arm of the wind force',
        value: demand.armM,
        unit: 'm',
        equation: '0.55 h where the infill reaches the ground, else h - s/2',
      },
      { source: 'ASCE 7-16 Figure 29.3-1, notes', tag: 'memory' },
    ),
    reasonStep(
      { basis: 'expected', group: 'wind' },
      {
        symbol: 'Kz',
        quantity: `exposure coefficient, exposure ${site.exposure}`,
        value: kz(0),
        unit: '-',
        equation: `2.01 (h/zg)^(2/alpha), ${constants}`,
      },
      NO_FLOOR,
    ),
    reasonStep(
      { basis: 'code', group: 'wind' },
      {
        symbol: 'Kz',
        quantity: `exposure coefficient, exposure ${site.exposure}`,
        value: kz(CODE_HEIGHT_FLOOR_M),
        unit: '-',
        equation: `2.01 (15 ft/zg)^(2/alpha), ${constants}`,
      },
      EXPOSURE_PROVENANCE,
    ),
    reasonStep(
      both,
      { symbol: 'Kzt', quantity: 'topographic factor', value: site.topographicFactor, unit: '-', equation: 'site' },
      RECORDED,
    ),
    reasonStep(
      both,
      {
        symbol: 'Kd',
        quantity: 'directionality',
        value: DIRECTIONALITY_FACTOR,
        unit: '-',
        equation: 'solid freestanding walls and open signs',
      },
      FACTORS,
    ),
    reasonStep(
      both,
      {
        symbol: 'Ke',
        quantity: 'ground elevation factor',
        value: elevationFactor(site.elevationM),
        unit: '-',
        equation: `exp(-0.000119 z), z = ${site.elevationM} m`,
      },
      ELEVATION,
    ),
    reasonStep(
      both,
      { symbol: 'G', quantity: 'gust effect', value: GUST_EFFECT_FACTOR, unit: '-', equation: 'rigid' },
      FACTORS,
    ),
    reasonStep(
      { basis: 'expected', group: 'wind' },
      {
        symbol: 'k',
        quantity: 'wind force on the post at 1 m/s',
        value: demand.forcePerV2,
        unit: 'N/(m/s)2',
        equation: '0.613 Kz Kzt Kd Ke G (Cf L) s',
      },
      VELOCITY_PRESSURE_PROVENANCE,
    ),
    reasonStep(
      { basis: 'code', group: 'wind' },
      {
        symbol: 'k',
        quantity: 'wind force on the post at 1 m/s',
        value: demand.codeForcePerV2,
        unit: 'N/(m/s)2',
        equation: '0.613 Kz Kzt Kd Ke G (Cf L) s',
      },
      VELOCITY_PRESSURE_PROVENANCE,
    ),
    ...sharedRunSteps(demands, post.sharedRun?.fenceRef ?? null),
  ];
}

/** The ends of a run in words, with the return lengths that reduce Case C's first band. */
const endsText = (run: RunFacts): string =>
  run.ends
    .map(
      (end, index) =>
        `end ${index === 0 ? 'A' : 'B'} ${end.kind}${end.kind === 'return' ? ` ${end.returnLengthM.toFixed(2)} m` : ''}`,
    )
    .join(', ');

/** What a corner post carries from its other run: the worse of the two counts. */
function sharedRunSteps(demands: readonly Demand[], fenceRef: string | null): readonly ReasonStep[] {
  const other = demands[1];
  if (!other || fenceRef === null) return [];
  const expected = { basis: 'expected', group: 'wind' } as const;
  const equation = `the same chain for the run of fence ${fenceRef}, which this corner post carries too`;
  const step = (part: Pick<ReasonStep, 'basis' | 'group'>, symbol: string, value: number, unit: string): ReasonStep =>
    reasonStep(part, { symbol, quantity: 'of the other run', value, unit, equation }, FORCE_COEFFICIENT_PROVENANCE);
  return [
    step({ basis: 'both', group: 'wind' }, 'e2', other.armM, 'm'),
    step(expected, 'k2', other.forcePerV2, 'N/(m/s)2'),
    step({ basis: 'code', group: 'wind' }, 'k2', other.codeForcePerV2, 'N/(m/s)2'),
  ];
}
