import type { ChartLanguage } from '../chart-words.ts';

/** What a cell of a table shows: a text with smaller words under it, or what a pen fills in. */
export type ReportCell =
  | string
  | { readonly kind: 'text'; readonly text: string; readonly under?: string; readonly strong?: boolean }
  /** A box to tick. */
  | { readonly kind: 'tick' }
  /** A field to write a number into. */
  | { readonly kind: 'blank' }
  /** A small drawing under a text. */
  | { readonly kind: 'drawn'; readonly text: string; readonly svg: string };

/** One column of a table. */
interface ReportColumn {
  readonly heading: string;
  /** Said under the heading in smaller words. */
  readonly unit?: string;
  /** True for figures, which stand right. */
  readonly figures?: boolean;
  /** Its part of the width against the others [-]. */
  readonly weight: number;
}

/** A table: what it is, its columns and its rows. Broken over pages, its headings stand on each of them. */
export interface ReportTable {
  readonly kind: 'table';
  readonly caption: string;
  readonly columns: readonly ReportColumn[];
  readonly rows: readonly (readonly ReportCell[])[];
  /** Rows at the end that are set off: sums. */
  readonly sums?: readonly (readonly ReportCell[])[];
}

/** One fact: what it is called, what it is, and smaller words under it. */
export interface ReportFact {
  readonly name: string;
  readonly value: string;
  readonly small?: string | undefined;
}

/** A drawing at the widths it is shown at. */
export interface ReportDrawing {
  readonly kind: 'drawing';
  /** What is seen in it, for those who do not see it. */
  readonly alt: string;
  /** The drawing as SVG at a width [px]; the prefix tells the ids of several copies in one page apart. */
  readonly svg: (widthPx: number, idPrefix: string) => string;
  readonly caption?: string;
}

/** A picture that came as bytes, as letters hold them. */
interface ReportPicture {
  readonly kind: 'picture';
  readonly alt: string;
  /** `data:image/png;base64,…`. */
  readonly source: string;
  readonly widthPx: number;
}

/** One part of a report; pages and paper are made from the same parts. */
export type ReportBlock =
  | { readonly kind: 'heading'; readonly level: 2 | 3; readonly text: string }
  | { readonly kind: 'paragraph'; readonly text: string; readonly look?: 'lead' | 'small' | 'strong' }
  /** The answer, set apart, with a smaller line that says what it is about. */
  | { readonly kind: 'answer'; readonly lines: readonly string[]; readonly about: string }
  | { readonly kind: 'facts'; readonly facts: readonly ReportFact[] }
  | { readonly kind: 'list'; readonly items: readonly string[]; readonly ticks?: boolean }
  | ReportTable
  | ReportDrawing
  | ReportPicture
  /** Lines to write on, each with the words before it. */
  | { readonly kind: 'lines'; readonly labels: readonly string[] }
  | { readonly kind: 'cautions'; readonly heading: string; readonly items: readonly string[] }
  /** What follows begins on a page of its own. */
  | { readonly kind: 'new page' };

/** Sizes of paper. */
export type Paper = 'letter' | 'a4';

/** A report as parts, in the order in which they are read. */
export interface Report {
  readonly language: ChartLanguage;
  readonly paper: Paper;
  readonly title: string;
  /** Lines under the title: where, for whom. */
  readonly under: readonly string[];
  /** What it is about, in a few words, for programs that list documents. */
  readonly subject: string;
  /** Who made it. */
  readonly author: string;
  /** The moment it was made, ISO 8601 in UTC. */
  readonly madeAt: string;
  /** Parts of the line at the foot of every page: made on, model version, data as of. */
  readonly foot: readonly string[];
  readonly blocks: readonly ReportBlock[];
}

/** The paper that goes with the units of a site. */
export const paperFor = (units: 'us' | 'metric'): Paper => (units === 'us' ? 'letter' : 'a4');
