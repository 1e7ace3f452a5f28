import { N_PER_LBF } from './force.ts';
import { M_PER_FT } from './length.ts';

/** Kilograms per cubic metre in one pound per cubic foot [(kg/m3)/pcf], derived from the pound and the foot. */
const KG_M3_PER_PCF = 0.45359237 / M_PER_FT ** 3;
/** Newtons per cubic metre in one pound-force per cubic foot [(N/m3)/pcf]. */
export const N_M3_PER_PCF = N_PER_LBF / M_PER_FT ** 3;

/** Preservative retention: pounds per cubic foot [pcf] to kilograms per cubic metre [kg/m3]. Source: exact definitions. */
export const kgM3FromPcf = (pcf: number): number => pcf * KG_M3_PER_PCF;
/** Preservative retention: kilograms per cubic metre [kg/m3] to pounds per cubic foot [pcf]. Source: exact definitions. */
export const pcfFromKgM3 = (kgM3: number): number => kgM3 / KG_M3_PER_PCF;
