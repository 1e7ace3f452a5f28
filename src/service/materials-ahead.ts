import type { Register } from '../register/database.ts';
import { listVisits, newestVisitChange } from '../register/visit-store.ts';
import { type SeasonMaterial, STATES_AHEAD, seasonMaterials } from '../season/visit/season-materials.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import { canonicalJson } from './canonical-json.ts';
import { keptAnswers } from './kept-answers.ts';
import { loadCatalogue } from './season-register.ts';

/** What to order for some weeks. */
export interface MaterialsAhead {
  readonly from: CalendarDay;
  /** Null: to the last visit there is. */
  readonly to: CalendarDay | null;
  readonly visits: number;
  readonly confirmedVisits: number;
  /** First day of the first visit and last day of the last; null without visits. */
  readonly days: { readonly first: CalendarDay; readonly last: CalendarDay } | null;
  readonly materials: readonly SeasonMaterial[];
  /** Of all materials, in the register's currency. */
  readonly cost: number;
}

/** Answers that are kept at a time. */
const MOST_KEPT = 20;

const kept = keptAnswers<MaterialsAhead>(MOST_KEPT);

async function addedUp({ db }: Register, from: CalendarDay, to: CalendarDay | null): Promise<MaterialsAhead> {
  const found = await listVisits(db, { from, to: to ?? undefined, states: STATES_AHEAD });
  const visits = found.filter(({ firstDay }) => firstDay >= from);
  const materials = seasonMaterials(visits, await loadCatalogue(db));
  const lastDays = visits.map(({ lastDay }) => lastDay).sort();
  return {
    from,
    to,
    visits: visits.length,
    confirmedVisits: visits.filter(({ state }) => state === 'confirmed').length,
    days: visits.length === 0 ? null : { first: visits[0]!.firstDay, last: lastDays.at(-1)! },
    materials,
    cost: materials.reduce((sum, { cost }) => sum + cost, 0),
  };
}

/** What the proposed and confirmed visits that begin between two days take; added up once until a visit or the catalogue changes. */
export async function materialsAhead(
  register: Register,
  from: CalendarDay,
  to: CalendarDay | null,
): Promise<MaterialsAhead> {
  const visits = await newestVisitChange(register.db);
  const catalogue = await loadCatalogue(register.db);
  return kept(register, canonicalJson({ visits, catalogue, from, to }), () => addedUp(register, from, to));
}
