/** Metres per second in one mile per hour [(m/s)/mph], exact (international mile of 1609.344 m). */
const MPS_PER_MPH = 0.44704;

/** Miles per hour [mph] to metres per second [m/s]. Source: international mile, exact. */
export const mpsFromMph = (mph: number): number => mph * MPS_PER_MPH;
/** Metres per second [m/s] to miles per hour [mph]. Source: international mile, exact. */
export const mphFromMps = (mps: number): number => mps / MPS_PER_MPH;
/** Kilometres per hour [km/h] to metres per second [m/s]. Source: SI, exact. */
export const mpsFromKmh = (kmh: number): number => kmh / 3.6;
/** Metres per second [m/s] to kilometres per hour [km/h]. Source: SI, exact. */
export const kmhFromMps = (mps: number): number => mps * 3.6;
