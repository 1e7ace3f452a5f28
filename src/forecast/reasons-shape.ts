import { FORCE_COEFFICIENT_PROVENANCE, forceCoefficientA } from '../capacity/force-coefficient.ts';
import {
  OPEN_SIGN_PROVENANCE,
  OPENINGS_PROVENANCE,
  openingsFactor,
  openSignCoefficient,
  SOLID_FROM,
} from '../capacity/openings.ts';
import { solidHeight } from '../capacity/post-load.ts';
import type { Provenance } from '../units/provenance.ts';
import type { RunFacts } from './fence-facts.ts';
import type { ReasonContext } from './reason-context.ts';
import { RECORDED, type ReasonStep, reasonStep } from './reason-step.ts';

const GEOMETRY: Provenance = { source: 'geometry', tag: 'derived' };

/** Steps from geometry to the force coefficient times tributary length of the deciding post. */
export function shapeSteps({ model, postClass }: ReasonContext): readonly ReasonStep[] {
  const { run } = model.state;
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
