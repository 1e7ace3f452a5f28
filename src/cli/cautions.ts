import { cautionsIn } from '../drawing/cautions.ts';

const [first = '', ...others] = cautionsIn('en').all;

/** The cautions of every text that shows a capacity, in two lines. */
export const CAUTIONS = `${first}\n${others.join(' ')}\n`;

/** The cautions as JSON output carries them. */
export const CAUTION_LIST: readonly string[] = cautionsIn('en').all;
