/** A point on the earth: degrees north and degrees east [deg]. */
export interface Place {
  readonly latitude: number;
  readonly longitude: number;
}

/** Mean radius of the earth [m]. Source: IUGG mean radius R1 (memory). */
const EARTH_RADIUS_M = 6_371_008.8;
const SECONDS_PER_HOUR = 3600;

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/**
 * Distance along the great circle [m], from 0 to half the circumference.
 * @param from latitude -90 to 90, longitude -180 to 180 [deg]
 * @param to the same
 * Source: haversine formula on a sphere (memory); at most some 0.5 % from the ellipsoid.
 */
export function greatCircleM(from: Place, to: Place): number {
  const north = Math.sin(radians(to.latitude - from.latitude) / 2);
  const east = Math.sin(radians(to.longitude - from.longitude) / 2);
  const a = north ** 2 + Math.cos(radians(from.latitude)) * Math.cos(radians(to.latitude)) * east ** 2;
  return 2 * EARTH_RADIUS_M * Math.asin(Math.min(1, Math.sqrt(a)));
}

/**
 * Hours of one person on the way there and back [h]; 0 where either place is not known.
 * @param speedMps speed along the great circle [m/s], above 0
 */
export function roundTripHours(base: Place | null, site: Place | null, speedMps: number): number {
  if (!base || !site) return 0;
  return (2 * greatCircleM(base, site)) / speedMps / SECONDS_PER_HOUR;
}

/** What an hour of one person on the road costs the office, truck included, in round US dollars [1/h]. Source: judgement. */
export const TRAVEL_COST_PER_PERSON_HOUR = 45;
