import type { CalendarDay } from '../../units/calendar-day.ts';
import type { WorksCatalogue } from '../works-catalogue.ts';
import { type MaterialNeed, materialNeeds } from './load-list.ts';
import type { Visit } from './visit.ts';

/** One material of a season's visits. */
export interface SeasonMaterial extends MaterialNeed {
  /** Visits that take some of it. */
  readonly visits: number;
  /** First day of the first of them: by then it has to be there. */
  readonly neededBy: CalendarDay;
  /** How much of the quantity is for visits that are confirmed. */
  readonly confirmedQuantity: number;
}

/** Visits that are still ahead and take materials: proposed or confirmed. */
export const STATES_AHEAD: readonly Visit['state'][] = ['proposed', 'confirmed'];

const worksOf = (visits: readonly Visit[]) => visits.flatMap(({ items }) => items.flatMap(({ works }) => works));

/**
 * What to order for the visits that are proposed or confirmed, by material in the order of the names; others are left out.
 * Source: see `materialNeeds`.
 */
export function seasonMaterials(visits: readonly Visit[], catalogue: WorksCatalogue): readonly SeasonMaterial[] {
  const ahead = visits.filter(({ state }) => STATES_AHEAD.includes(state));
  const key = ({ name, unit }: Pick<MaterialNeed, 'name' | 'unit'>): string => JSON.stringify([name, unit]);
  const each = ahead.map((visit) => ({
    visit,
    needs: new Map(materialNeeds(worksOf([visit]), catalogue).map((need) => [key(need), need.quantity])),
  }));
  return materialNeeds(worksOf(ahead), catalogue).map((need) => {
    const takers = each.filter(({ needs }) => needs.has(key(need)));
    return {
      ...need,
      visits: takers.length,
      neededBy: takers.reduce((first, { visit: { firstDay } }) => (firstDay < first ? firstDay : first), '9999-12-31'),
      confirmedQuantity: takers
        .filter(({ visit }) => visit.state === 'confirmed')
        .reduce((sum, { needs }) => sum + needs.get(key(need))!, 0),
    };
  });
}
