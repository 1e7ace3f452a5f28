import { FORCE_COEFFICIENT_PROVENANCE } from '../capacity/force-coefficient.ts';
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
import type { Demand } from './post-demand.ts';
import type { ReasonContext } from './reason-context.ts';
import { RECORDED, type ReasonStep, reasonStep } from './reason-step.ts';

const FACTORS: Provenance = { source: 'ASCE 7-16 Table 26.6-1 (Kd) and 26.11.1 (G)', tag: 'read' };
const ELEVATION: Provenance = { source: 'ASCE 7-16 26.9', tag: 'memory' };
const NO_FLOOR: Provenance = { source: 'Kz at the real height, without the 15 ft floor', tag: 'judgement' };

/** Steps from exposure and site to the wind force on the deciding post at 1 m/s, on both bases. */
export function pressureSteps({ facts, model, postClass }: ReasonContext): readonly ReasonStep[] {
  const { run } = model.state;
  const { site } = facts;
  const { demands, post } = postClass.sample;
  const demand = demands[0]!;
  const both = { basis: 'both', group: 'wind' } as const;
  const { alpha, gradientHeightM } = exposureConstants(site.exposure);
  const constants = `alpha ${alpha}, zg ${gradientHeightM.toFixed(1)} m`;
  const kz = (floorM: number): number => exposureCoefficient(run.heightM, site.exposure, floorM);
  return [
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
