import {
  CLIMATE_FACTOR_FLOOR,
  CLIMATE_FACTOR_PROVENANCE,
  climateFactor,
  rainFunction,
  temperatureFunction,
  unflooredClimateFactor,
} from '../decay/climate-factor.ts';
import type { Provenance } from '../units/provenance.ts';
import type { ReasonContext } from './reason-context.ts';
import { RECORDED, type ReasonStep, reasonStep } from './reason-step.ts';

const ZONES: Provenance = { source: 'factors of decay zones 1 to 5', tag: 'judgement' };
const FLOOR: Provenance = { source: 'floor of the climate factor', tag: 'judgement' };

/** Steps from a site's climate to its climate factor. */
export function climateSteps({ facts }: Pick<ReasonContext, 'facts'>): readonly ReasonStep[] {
  const { climate } = facts.site;
  const part = { basis: 'both', group: 'rot' } as const;
  const factor = climateFactor(climate);
  if (climate.kind === 'decay-zone') {
    return [
      reasonStep(
        part,
        {
          symbol: 'k_climate',
          quantity: 'climate factor',
          value: factor,
          unit: '-',
          equation: `decay zone ${climate.zone}`,
        },
        ZONES,
      ),
    ];
  }
  const { rainMmPerYear: rain, meanTemperatureC: temperature, dryMonths } = climate;
  const floored = unflooredClimateFactor(rain, temperature, dryMonths) < CLIMATE_FACTOR_FLOOR;
  return [
    reasonStep(
      part,
      { symbol: 'R', quantity: 'mean annual rain', value: rain, unit: 'mm/a', equation: 'climate zone' },
      RECORDED,
    ),
    reasonStep(
      part,
      { symbol: 'T', quantity: 'mean annual temperature', value: temperature, unit: 'degC', equation: 'climate zone' },
      RECORDED,
    ),
    reasonStep(
      part,
      { symbol: 'N', quantity: 'dry months', value: dryMonths, unit: '-', equation: 'climate zone' },
      RECORDED,
    ),
    reasonStep(
      part,
      {
        symbol: 'f',
        quantity: 'rain function',
        value: rainFunction(rain, dryMonths),
        unit: '-',
        equation: '10 (1 - exp(-0.001 (R - 250))) (1 - N/6)',
      },
      CLIMATE_FACTOR_PROVENANCE,
    ),
    reasonStep(
      part,
      {
        symbol: 'g',
        quantity: 'temperature function',
        value: temperatureFunction(temperature),
        unit: '-',
        equation: '0 to 5 degC; -1 + 0.2 T to 20; -25 + 1.4 T above',
      },
      CLIMATE_FACTOR_PROVENANCE,
    ),
    reasonStep(
      part,
      {
        symbol: 'k_climate',
        quantity: 'climate factor',
        value: factor,
        unit: '-',
        equation: floored ? `f^0.3 g^0.2, floored at ${CLIMATE_FACTOR_FLOOR}` : 'f^0.3 g^0.2',
      },
      floored ? FLOOR : CLIMATE_FACTOR_PROVENANCE,
    ),
  ];
}
