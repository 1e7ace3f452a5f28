import { mphFromMps, mpsFromMph } from '../units/speed.ts';
import type { WindBasis } from './wind-entry.ts';

/** IBC 1609.3.1: V_asd = V_ult sqrt(0.6) (memory). */
const ASD_SPEED_FACTOR = Math.sqrt(0.6);

/**
 * 3-second gust that a fastest-mile speed stands for [m/s]: V_3s = 1.05 V_fm + 10.5 mph.
 * @param fastestMileMps V_fm [m/s]; the relation is meant for about 70 to 110 mph
 * Source: IBC Table 1609.3.1 of the editions that carried both speeds (memory).
 */
export const gustFromFastestMile = (fastestMileMps: number): number =>
  mpsFromMph(1.05 * mphFromMps(fastestMileMps) + 10.5);

/**
 * The 3-second gust an entered speed stands for [m/s]: ultimate and nominal as they are, V_asd / sqrt(0.6), fastest mile converted.
 * @param basis what was entered
 * @param speedMps speed as entered [m/s], > 0
 * Source: ASCE 7-10 on (ultimate), ASCE 7-95 to 7-05 (nominal), IBC 1609.3.1 (V_asd, fastest mile; memory).
 */
export function threeSecondGust(basis: WindBasis, speedMps: number): number {
  switch (basis) {
    case 'ultimate':
    case 'nominal':
      return speedMps;
    case 'asd':
      return speedMps / ASD_SPEED_FACTOR;
    case 'fastest-mile':
      return gustFromFastestMile(speedMps);
  }
}

/**
 * Factor on wind in an allowable-stress check against the entered speed [-]: 0.6 for ultimate speeds (and V_asd, turned back into one), 1 for nominal.
 * Source: ASCE 7-10 2.4 (0.6 W, read); ASCE 7-05 2.4 (1.0 W, memory).
 */
export const windLoadFactor = (basis: WindBasis): number => (basis === 'ultimate' || basis === 'asd' ? 0.6 : 1);
