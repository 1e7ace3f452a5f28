import type { Species } from '../../src/capacity/wood-strength.ts';
import type { TreatmentClass } from '../../src/decay/treatment-class.ts';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import type { Standing } from '../../src/units/provenance.ts';
import { SECTIONS } from './section-share.ts';

/** A number of the program that nobody has read in a source, and how far it might be off. */
export interface NumberRow {
  /** Unique and stable. */
  readonly id: string;
  readonly what: string;
  /** File under src/. */
  readonly file: string;
  /** Text that stands in the file exactly once, the number between « and ». */
  readonly text: string;
  /** What to write in its place, down and up. */
  readonly low: string;
  readonly high: string;
  readonly movedBy: string;
  readonly tag: Extract<Standing, 'memory' | 'judgement' | 'derived' | 'read at second hand'>;
  readonly source: string;
  /** Names (`file#name`) that this row answers for, besides others. */
  readonly speaksFor: readonly string[];
  /** The demo fences as they would be if the number concerned them; `value` is the number tried. Null: as they are. */
  readonly asIf: { readonly said: string; readonly facts: (facts: FenceFacts, value: string) => FenceFacts } | null;
}

/** The number as it stands between the marks. */
export function markedValue(text: string): string {
  const value = /«(.*)»/s.exec(text)?.[1];
  if (value === undefined) throw new Error(`no number is marked in ${JSON.stringify(text)}`);
  return value;
}

type Rest = Omit<NumberRow, 'low' | 'high' | 'movedBy' | 'asIf' | 'speaksFor'> & {
  readonly asIf?: NumberRow['asIf'];
  readonly names?: readonly string[];
};

const named = ({ names, ...rest }: Rest): Omit<NumberRow, 'low' | 'high' | 'movedBy'> => ({
  ...rest,
  asIf: rest.asIf ?? null,
  speaksFor: (names ?? []).map((name) => (name.includes('#') ? name : `${rest.file}#${name}`)),
});

/** A number moved down and up to stated values. */
export const between = (low: number | string, high: number | string, rest: Rest): NumberRow => ({
  ...named(rest),
  low: String(low),
  high: String(high),
  movedBy: `${low} to ${high}`,
});

/** A number moved down and up by a share of itself. */
export function byShare(share: number, rest: Rest): NumberRow {
  const value = Number(markedValue(rest.text));
  if (!Number.isFinite(value)) throw new Error(`${rest.id}: ${markedValue(rest.text)} is not a number`);
  const moved = (factor: number): string => String(Number((value * factor).toPrecision(6)));
  return { ...named(rest), low: moved(1 - share), high: moved(1 + share), movedBy: `${Math.round(100 * share)} %` };
}

/** The demo fences as if all their posts were of a treatment class. */
export const ofClass = (treatmentClass: TreatmentClass, said: string): NonNullable<NumberRow['asIf']> => ({
  said: `as if of ${said}`,
  facts: (facts) => ({ ...facts, wood: { ...facts.wood, treatmentClass } }),
});

/** The demo fences as if all their posts were of a species. */
export const ofSpecies = (species: Species, said: string): NonNullable<NumberRow['asIf']> => ({
  said: `as if of ${said}`,
  facts: (facts) => ({ ...facts, wood: { ...facts.wood, species } }),
});

/** The demo fences as if their posts were round, 115 mm, of a species. */
export const roundOf = (species: Species, said: string): NonNullable<NumberRow['asIf']> => ({
  said: `as if of round ${said}`,
  facts: (facts) => ({ ...facts, wood: { ...facts.wood, species, section: SECTIONS.round115 } }),
});
