import fc from 'fast-check';

/**
 * The properties of the suite are held over the same examples in every run, so that a change is judged by what it changes.
 * `npm run properties` holds them over others: it gives another seed each round, and prints it.
 */
const DEFAULT_SEED = 20_270_601;

const asked = process.env.PROPERTIES_SEED;
if (asked !== undefined && !/^\d{1,9}$/.test(asked))
  throw new Error(`PROPERTIES_SEED is ${JSON.stringify(asked)}; give a whole number of at most 9 digits`);

fc.configureGlobal({ seed: asked === undefined ? DEFAULT_SEED : Number(asked) });
