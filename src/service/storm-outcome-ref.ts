const LONGEST_NAME_IN_REF = 40;

/** A storm's name as part of a ref: plain letters, digits and hyphens. */
const nameInRef = (name: string): string =>
  name
    .normalize('NFD')
    .replaceAll(/\p{M}/gu, '')
    .replaceAll(/[^A-Za-z0-9]+/g, '-')
    .slice(0, LONGEST_NAME_IN_REF)
    .replaceAll(/^-|-$/g, '') || 'storm';

/** The ref under which what one storm did to a fence is stored, each result with its own ending. */
export const stormOutcomeRef = (fenceRef: string, day: string, stormName: string): string =>
  `${fenceRef}/${day}/${nameInRef(stormName)}`;
