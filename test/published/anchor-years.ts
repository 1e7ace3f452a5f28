import { type AnchorChoice, lineOverYears, type Taken, yearsUntil } from './anchor-fence.ts';

/** A year in the life of an anchor fence, by published anchor and both ways of taking the median. */
export interface AnchorYear {
  readonly id: string;
  readonly quantity: string;
  readonly published: number;
  readonly years: (taken: Taken) => number;
}

const STOCKS = [
  ['ground-contact', 'ground-contact stock'],
  ['above-ground-stock', 'above-ground stock'],
] as const;

const shortOf = (mph: number, published: readonly [number, number]): readonly AnchorYear[] =>
  STOCKS.map(([treatmentClass, name], index) => ({
    id: `short.${mph}.${treatmentClass}`,
    quantity: `short of ${mph} mph, ${name}`,
    published: published[index]!,
    years: (taken) => yearsUntil(lineOverYears({ treatmentClass }, taken).snapMph, mph),
  }));

const strength = (id: string, name: string, share: number, choice: AnchorChoice, published: number): AnchorYear => ({
  id: `strength.${id}`,
  quantity: name,
  published,
  years: (taken) => yearsUntil(lineOverYears(choice, taken).strengthLeft, share),
});

const turnover = (embedmentIn: number, published: readonly [number, number]): readonly AnchorYear[] =>
  STOCKS.map(([treatmentClass, name], index) => ({
    id: `turnover.${embedmentIn}.${treatmentClass}`,
    quantity: `snaps before it leans, ${embedmentIn} in deep, ${name}`,
    published: published[index]!,
    years: (taken) => {
      const line = lineOverYears({ treatmentClass, embedmentIn }, taken);
      return yearsUntil(line.snapMph, line.leanMph);
    },
  }));

/** Exposure B, Gulf-like climate (1,600 mm, 19.5 degC), line posts. */
export const ANCHOR_YEARS: readonly AnchorYear[] = [
  ...shortOf(105, [16.5, 8.1]),
  ...shortOf(89, [22.5, 10.9]),
  ...shortOf(75, [28, 13.6]),
  strength('two-thirds', 'two thirds of the strength, ground-contact stock', 2 / 3, {}, 16.3),
  strength('half', 'half the strength, above-ground stock', 1 / 2, { treatmentClass: 'above-ground-stock' }, 10.5),
  ...turnover(24, [34, 17]),
  ...turnover(30, [26, 13]),
];
