import { NO_LOSS, type SectionLoss, sectionArea, sectionModulus } from '../capacity/section-properties.ts';
import type { Provenance } from '../units/provenance.ts';
import type { ReasonContext } from './reason-context.ts';
import { RECORDED, type ReasonStep, reasonStep } from './reason-step.ts';

const STATICS: Provenance = { source: 'statics of the residual section', tag: 'derived' };

/** Steps from rot depth to the residual section. */
export function sectionSteps({ postClass }: ReasonContext, loss: SectionLoss): readonly ReasonStep[] {
  const { section, momentCapacityNm } = postClass.sample.post.wood;
  // What does not rot is known by its moment alone.
  if (momentCapacityNm !== null) return [];
  const part = { basis: 'both', group: 'section' } as const;
  const round = section.kind === 'round';
  const size = round
    ? [
        reasonStep(
          part,
          {
            symbol: 'D',
            quantity: 'diameter as installed',
            value: section.diameterMm,
            unit: 'mm',
            equation: 'section',
          },
          RECORDED,
        ),
      ]
    : [
        reasonStep(
          part,
          {
            symbol: 'b',
            quantity: 'width along the fence as installed',
            value: section.widthMm,
            unit: 'mm',
            equation: 'section',
          },
          RECORDED,
        ),
        reasonStep(
          part,
          {
            symbol: 'h',
            quantity: 'depth in the wind as installed',
            value: section.depthMm,
            unit: 'mm',
            equation: 'section',
          },
          RECORDED,
        ),
      ];
  const hollow = loss.cavityDiameterMm > 0;
  const modulus = sectionModulus(section, loss);
  return [
    ...size,
    ...(hollow
      ? [
          reasonStep(
            part,
            {
              symbol: 'v',
              quantity: 'width of the cavity, as found',
              value: loss.cavityDiameterMm,
              unit: 'mm',
              equation: 'inspection',
            },
            RECORDED,
          ),
        ]
      : []),
    reasonStep(
      part,
      {
        symbol: 'S',
        quantity: 'residual section modulus',
        value: modulus,
        unit: 'mm3',
        equation: `${round ? 'pi (D - 2d - c)^3 / 32' : '(b - 2d)(h - 2d - c)^2 / 6'}${hollow ? ', less pi v^4 / 64 over half the depth left; 0 where the shell is too thin' : ''}`,
      },
      STATICS,
    ),
    reasonStep(
      part,
      {
        symbol: 'S/S0',
        quantity: 'bending strength left',
        value: modulus / sectionModulus(section, NO_LOSS),
        unit: '-',
        equation: 'residual over installed section modulus',
      },
      STATICS,
    ),
    reasonStep(
      part,
      {
        symbol: 'A',
        quantity: 'residual area',
        value: sectionArea(section, loss),
        unit: 'mm2',
        equation: `${round ? 'pi (D - 2d - c)^2 / 4' : '(b - 2d)(h - 2d - c)'}${hollow ? ', less pi v^2 / 4' : ''}`,
      },
      STATICS,
    ),
  ];
}
