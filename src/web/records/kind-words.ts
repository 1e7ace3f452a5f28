import { RECORD_KINDS, type RecordKind } from '../../register/record-store.ts';

/** What a kind of record is called: one of them, several. */
export const KIND_WORDS: Readonly<Record<RecordKind, { readonly one: string; readonly several: string }>> = {
  owners: { one: 'owner', several: 'owners' },
  'climate-zones': { one: 'climate zone', several: 'climate zones' },
  'storm-seasons': { one: 'storm season', several: 'storm seasons' },
  sites: { one: 'site', several: 'sites' },
  fences: { one: 'fence', several: 'fences' },
  posts: { one: 'post', several: 'posts' },
  works: { one: 'works done', several: 'works done' },
  inspections: { one: 'inspection', several: 'inspections' },
  readings: { one: 'reading', several: 'readings' },
  outcomes: { one: 'storm outcome', several: 'storm outcomes' },
  catalogue: { one: 'line of the catalogue', several: 'lines of the catalogue' },
  materials: { one: 'material', several: 'materials' },
  crews: { one: 'crew', several: 'crews' },
  'crew-members': { one: 'crew member', several: 'crew members' },
  'days-off': { one: 'row of days off', several: 'days off' },
};

/** The kind of that name; null where there is none. */
export const kindNamed = (text: string): RecordKind | null => RECORD_KINDS.find((kind) => kind === text) ?? null;

/** A number of things in words: `1 owner`, `3 owners`. */
export const countOf = (number: number, kind: RecordKind): string =>
  `${number} ${KIND_WORDS[kind][number === 1 ? 'one' : 'several']}`;
