/**
 * Bending moment that a section resists [N m]: f S.
 * @param strengthMpa f, bending strength [MPa]
 * @param modulusMm3 S, residual section modulus [mm3]
 * Source: statics.
 */
export const bendingMoment = (strengthMpa: number, modulusMm3: number): number => (strengthMpa * modulusMm3) / 1000;

/**
 * Horizontal force that breaks a post by bending at the groundline [N]: f S / arm.
 * @param strengthMpa f, bending strength [MPa]
 * @param modulusMm3 S, residual section modulus [mm3]
 * @param armM height of the force above the groundline [m], > 0
 * Source: statics.
 */
export const bendingForce = (strengthMpa: number, modulusMm3: number, armM: number): number =>
  bendingMoment(strengthMpa, modulusMm3) / armM;

/**
 * Horizontal force that shears a post at the groundline [N]: 2/3 f_v A for a rectangle, 3/4 f_v A for a round.
 * @param shearMpa f_v, shear strength [MPa]
 * @param areaMm2 A, residual area [mm2]
 * @param kind shape of the section
 * Source: statics (parabolic shear stress); NDS 3.4.2 for the rectangle (memory).
 */
export const shearForce = (shearMpa: number, areaMm2: number, kind: 'rectangular' | 'round'): number =>
  (kind === 'round' ? 3 / 4 : 2 / 3) * shearMpa * areaMm2;

/**
 * Gust at which the wind force on a post equals what it resists [m/s]: V = sqrt(R / k).
 * @param resistanceN R, resisting horizontal force at the arm [N], >= 0
 * @param forcePerSpeedSquared k, wind force at 1 m/s [N/(m/s)^2], > 0
 * Source: ASCE 7-16 Eq. 26.10-1.si and 29.3-1 solved for V (derived).
 */
export const speedAtResistance = (resistanceN: number, forcePerSpeedSquared: number): number =>
  Math.sqrt(Math.max(0, resistanceN) / forcePerSpeedSquared);
