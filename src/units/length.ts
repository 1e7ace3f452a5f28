/** Metres in one international foot [m/ft], exact (international yard and pound agreement, 1959). */
export const M_PER_FT = 0.3048;
/** Millimetres in one inch [mm/in], exact (same agreement). */
export const MM_PER_IN = 25.4;
/** Millimetres in one metre [mm/m]. */
export const MM_PER_M = 1000;

/** Feet [ft] to metres [m]. Source: international foot, exact. */
export const metresFromFeet = (feet: number): number => feet * M_PER_FT;
/** Metres [m] to feet [ft]. Source: international foot, exact. */
export const feetFromMetres = (metres: number): number => metres / M_PER_FT;
/** Inches [in] to millimetres [mm]. Source: international inch, exact. */
export const mmFromInches = (inches: number): number => inches * MM_PER_IN;
/** Millimetres [mm] to inches [in]. Source: international inch, exact. */
export const inchesFromMm = (mm: number): number => mm / MM_PER_IN;
