import type { ClimateFacts } from '../decay/climate-factor.ts';
import { inchesFromMm } from '../units/length.ts';
import { fahrenheitFromCelsius } from '../units/temperature.ts';
import { changedByStep, changedEitherWay, type InputChange, sameText, shortNumber } from './input-change.ts';
import { type SensitivityCase, withSite } from './sensitivity-case.ts';

const DECAY_ZONES = [1, 2, 3, 4, 5] as const;

/**
 * The climate of a site off by so much: a decay zone by one zone, a measured climate in its rain and its temperature.
 * @param errors share of the annual rain [-], mean temperature [degC]
 */
export function climateChanges(
  at: SensitivityCase,
  errors: { readonly rainShare: number; readonly temperatureC: number },
): readonly InputChange[] {
  const { climate } = at.site;
  const withClimate = (changed: ClimateFacts): SensitivityCase => withSite(at, { climate: changed });
  if (climate.kind === 'decay-zone') {
    return [
      changedByStep(
        'decay zone',
        DECAY_ZONES,
        (zone) => zone === climate.zone,
        (zone) => ({ label: sameText(`zone ${zone}`), at: withClimate({ kind: 'decay-zone', zone }) }),
      ),
    ];
  }
  return [
    changedEitherWay('annual rain', (sign) => {
      const rainMmPerYear = climate.rainMmPerYear * (1 + sign * errors.rainShare);
      return {
        label: {
          us: `${shortNumber(inchesFromMm(rainMmPerYear), 0)} in`,
          metric: `${shortNumber(rainMmPerYear, 0)} mm`,
        },
        at: withClimate({ ...climate, rainMmPerYear }),
      };
    }),
    changedEitherWay('mean temperature', (sign) => {
      const meanTemperatureC = climate.meanTemperatureC + sign * errors.temperatureC;
      return {
        label: {
          us: `${shortNumber(fahrenheitFromCelsius(meanTemperatureC), 1)} °F`,
          metric: `${shortNumber(meanTemperatureC, 1)} °C`,
        },
        at: withClimate({ ...climate, meanTemperatureC }),
      };
    }),
  ];
}
