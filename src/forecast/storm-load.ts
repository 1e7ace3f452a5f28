/** Spread of ln force from storm to storm (direction, gust) [-]; judgement. As a speed it is half of that. */
export const STORM_LOAD_SPREAD = 0.18;

/**
 * A speed against one storm from its worst direction, over the speed with directionality counted [-]: sqrt(0.85).
 * Source: ASCE 7-16 Table 26.6-1, Kd (value read); its use here is a model choice.
 */
export const WORST_DIRECTION = Math.sqrt(0.85);
