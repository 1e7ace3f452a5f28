import type { CatalogueRecord } from './catalogue-record.ts';
import type { ClimateZoneRecord } from './climate-zone-record.ts';
import type { CrewMemberRecord } from './crew-member-record.ts';
import type { CrewRecord } from './crew-record.ts';
import type { DayOffRecord } from './day-off-record.ts';
import type { FenceRecord } from './fence-record.ts';
import type { InspectionRecord } from './inspection-record.ts';
import type { MaterialRecord } from './material-record.ts';
import type { OwnerRecord } from './owner-record.ts';
import type { PostRecord } from './post-record.ts';
import type { ReadingRecord } from './reading-record.ts';
import type { SiteRecord } from './site-record.ts';
import type { StormOutcomeRecord } from './storm-outcome-record.ts';
import type { StormSeasonRecord } from './storm-season-record.ts';

type IsCapital<C extends string> = C extends Lowercase<C> ? false : true;

/** The database's name of a record's key: `heightM` is stored as `height_m`. */
type ColumnName<S extends string> = S extends `${infer C}${infer Rest}`
  ? `${IsCapital<C> extends true ? `_${Lowercase<C>}` : C}${ColumnName<Rest>}`
  : S;

type Stored<V> = V extends boolean ? number : V;

/** When a row was written, ISO 8601. */
interface Stamps {
  readonly created_at: string;
  readonly updated_at: string;
}

/** A record as a row: column names for keys, 0 and 1 for booleans. */
type RowOf<R> = { readonly [K in keyof R & string as ColumnName<K>]: Stored<R[K]> };

/** A row of `works`: what its kind needs to say is packed into `details`. */
interface WorksRow {
  readonly ref: string;
  readonly fence_ref: string;
  readonly day: string;
  readonly kind: string;
  readonly posts: string;
  readonly details: string;
}

/** The tables of what people enter. */
export interface RecordTables {
  readonly owners: RowOf<OwnerRecord> & Stamps;
  readonly climate_zones: RowOf<ClimateZoneRecord> & Stamps;
  readonly storm_seasons: RowOf<StormSeasonRecord> & Stamps;
  readonly sites: RowOf<SiteRecord> & Stamps;
  readonly fences: RowOf<FenceRecord> & Stamps;
  readonly posts: RowOf<PostRecord> & Stamps;
  readonly works: WorksRow & Stamps;
  readonly inspections: RowOf<InspectionRecord> & Stamps;
  readonly readings: RowOf<ReadingRecord> & Stamps;
  /** The posts as one text. */
  readonly storm_outcomes: RowOf<Omit<StormOutcomeRecord, 'posts'>> & { readonly posts: string } & Stamps;
  readonly catalogue_lines: RowOf<CatalogueRecord> & Stamps;
  readonly catalogue_materials: RowOf<MaterialRecord> & Stamps;
  readonly crews: RowOf<CrewRecord> & Stamps;
  readonly crew_members: RowOf<CrewMemberRecord> & Stamps;
  readonly days_off: RowOf<DayOffRecord> & Stamps;
  readonly settings: { readonly key: string; readonly value: string; readonly updated_at: string };
}
