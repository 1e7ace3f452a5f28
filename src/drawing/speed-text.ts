import { kmhFromMps, mphFromMps } from '../units/speed.ts';

/** Units in which a site is shown. */
export type DisplayUnits = 'us' | 'metric';

/** Name of the speed unit of the display units. */
export const speedUnit = (units: DisplayUnits): 'mph' | 'km/h' => (units === 'us' ? 'mph' : 'km/h');

/** A speed [m/s] in the display units [mph or km/h], unrounded. */
export const displaySpeed = (speedMps: number, units: DisplayUnits): number =>
  units === 'us' ? mphFromMps(speedMps) : kmhFromMps(speedMps);

/** A speed [m/s] as whole display units with their name: `105 mph`, `169 km/h`. */
export const speedText = (speedMps: number, units: DisplayUnits): string =>
  `${Math.round(displaySpeed(speedMps, units))} ${speedUnit(units)}`;
