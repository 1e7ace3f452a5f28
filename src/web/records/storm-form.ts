import type { ExportUnits } from '../../register/csv/csv-field.ts';
import type { RowCells } from '../../register/csv/record-cells.ts';
import { stormOutcomeRef } from '../../service/storm-outcome-ref.ts';
import { type SentForm, textField } from '../frame/text-field.ts';

/** The storm as a form says it. */
export interface StormEntry {
  readonly storm: string;
  readonly day: string;
  readonly gust: string;
  readonly spread: string;
  readonly source: string;
  readonly reporter: string;
}

/** What a form says became of one fence. */
export interface FenceEntry {
  readonly fenceRef: string;
  /** True where all posts that are not named beside it stood. */
  readonly stood: boolean;
  /** Numbers of posts, or `all`. */
  readonly leaned: string;
  readonly snapped: string;
}

/** One outcome to be stored, and whose it is. */
export interface OutcomeRow {
  readonly fenceRef: string;
  readonly cells: RowCells;
}

/** The column of gusts in a site's units. */
const gustColumn = (units: ExportUnits): string => (units === 'us' ? 'gust_mph' : 'gust_kmh');

/** The storm as it was sent. */
export function sentStorm(form: SentForm): StormEntry {
  const text = (name: string): string => textField(form, name).trim();
  return {
    storm: text('storm'),
    day: text('day'),
    gust: text('gust'),
    spread: text('spread').replace(/\s*%$/, ''),
    source: text('gust_source'),
    reporter: text('reported_by'),
  };
}

/** What was sent of each fence; the fields are numbered in the order of the fences. */
export const sentFences = (form: SentForm, fenceRefs: readonly string[]): readonly FenceEntry[] =>
  fenceRefs.map((fenceRef) => ({
    fenceRef,
    stood: textField(form, `stood ${fenceRef}`) === 'yes',
    leaned: textField(form, `leaned ${fenceRef}`).trim(),
    snapped: textField(form, `snapped ${fenceRef}`).trim(),
  }));

const posts = (text: string): string => text.replaceAll(/[\s,]+/g, ' ').trim();

/** The outcomes of a report, fence by fence, as rows of a file. */
export function outcomeRows(
  storm: StormEntry,
  fences: readonly FenceEntry[],
  units: ExportUnits,
): readonly OutcomeRow[] {
  return fences.flatMap(({ fenceRef, stood, leaned, snapped }) => {
    const base = stormOutcomeRef(fenceRef, storm.day, storm.storm);
    const row = (result: 'stood' | 'leaned' | 'snapped', of: string): OutcomeRow => ({
      fenceRef,
      cells: {
        ref: `${base}/${result}`,
        storm: storm.storm,
        fence: fenceRef,
        day: storm.day,
        [gustColumn(units)]: storm.gust,
        ...(storm.spread === '' ? {} : { gust_spread_percent: storm.spread }),
        posts: posts(of),
        result,
        gust_source: storm.source,
        reported_by: storm.reporter,
      },
    });
    return [
      ...(stood ? [row('stood', 'all')] : []),
      ...(leaned === '' ? [] : [row('leaned', leaned)]),
      ...(snapped === '' ? [] : [row('snapped', snapped)]),
    ];
  });
}
