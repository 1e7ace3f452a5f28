/** The cautions of every output that shows a capacity, in two lines. */
export const CAUTIONS = `Planning estimates, no structural certification: local codes decide; ask a licensed engineer where life safety is at stake.
Keep away from leaning fences in wind; call before you dig; treated wood and its dust need care; preservatives only by licensed applicators where the law says so.
`;
