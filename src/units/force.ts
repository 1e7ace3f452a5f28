/** Newtons in one pound-force [N/lbf], exact (0.45359237 kg x 9.80665 m/s2). */
export const N_PER_LBF = 4.4482216152605;

/** Pounds-force [lbf] to newtons [N]. Source: definition of the pound and of standard gravity, exact. */
export const newtonsFromLbf = (lbf: number): number => lbf * N_PER_LBF;
/** Newtons [N] to pounds-force [lbf]. Source: definition of the pound and of standard gravity, exact. */
export const lbfFromNewtons = (newtons: number): number => newtons / N_PER_LBF;
