import { NO_MONEY } from '../season/money/money.ts';

/** How an owner's money is planned where the office said nothing else; the command line takes the same. Source: judgement. */
export const USUAL_MONEY_TERMS = {
  years: 20,
  openingBalance: NO_MONEY,
  contribution: { kind: 'find', course: 'flat', cover: 'expected' },
  inflation: 0.03,
  interest: 0.02,
  floor: NO_MONEY,
  dependence: 'independent',
  rule: 'cheapest',
  longestServiceYears: 25,
  inspectEveryYears: 5,
  sharedPart: 0.5,
} as const;
