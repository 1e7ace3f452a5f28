import type { Generated } from 'kysely';
import type { VisitState } from '../season/visit/visit.ts';

interface SeasonPlansTable {
  readonly number: Generated<number>;
  readonly made_at: string;
  readonly as_of: string;
  readonly first_week: string;
  readonly weeks: number;
  readonly model_version: string;
  readonly state: 'made' | 'accepted' | 'superseded';
  readonly content: string;
  readonly accepted_at: string | null;
  readonly by: string;
  readonly because: string;
}

interface VisitsTable {
  readonly uid: string;
  readonly site_ref: string;
  readonly crew_ref: string;
  readonly first_day: string;
  readonly last_day: string;
  readonly starts_at: string | null;
  readonly state: VisitState;
  readonly sequence: number;
  readonly travel_person_hours: number;
  readonly plan_number: number | null;
  readonly note: string;
  readonly created_at: string;
  readonly changed_at: string;
}

interface VisitItemsTable {
  readonly uid: string;
  readonly fence_ref: string;
  readonly option_key: string;
  readonly works: string;
  readonly person_hours: number;
  readonly price: number;
  readonly must_rank: number;
  readonly state: 'planned' | 'done' | 'returned';
}

interface VisitHoursTable {
  readonly uid: string;
  readonly fence_ref: string;
  readonly person_hours: number;
}

interface VisitEntriesTable {
  readonly uid: string;
  readonly fence_ref: string;
  readonly kind: 'works' | 'inspection';
  readonly ref: string;
}

interface VisitChangesTable {
  readonly id: Generated<number>;
  readonly uid: string;
  readonly at: string;
  readonly state: VisitState;
  readonly first_day: string;
  readonly last_day: string;
  readonly crew_ref: string;
  readonly sequence: number;
  readonly by: string;
  readonly because: string;
}

/** The tables of season plans and visits; no forecast depends on them. */
export interface VisitTables {
  readonly season_plans: SeasonPlansTable;
  readonly visits: VisitsTable;
  readonly visit_items: VisitItemsTable;
  readonly visit_hours: VisitHoursTable;
  readonly visit_entries: VisitEntriesTable;
  readonly visit_changes: VisitChangesTable;
}
