import { listRecords, type RegisterDb } from '../register/record-store.ts';
import { listVisits } from '../register/visit-store.ts';
import { fencesDoneSince } from '../register/visit-work-store.ts';
import { type AcceptedVisits, type AcceptInputs, acceptPlan } from '../season/visit/accept-plan.ts';
import { layOutDays, type TakenDays } from '../season/visit/lay-out-days.ts';
import type { Visit } from '../season/visit/visit.ts';
import type { WeekVisit } from '../season/visit/visits-of-plan.ts';
import { hoursByWeek } from '../season/visit/visits-that-stand.ts';
import { addDays, type CalendarDay } from '../units/calendar-day.ts';
import { canonicalJson, sha256 } from './canonical-json.ts';
import { placeOf } from './season-inputs.ts';
import { type CrewInRegister, crewHoursOn, loadCrews } from './season-register.ts';

/** Days of a week on which crews go out: Monday to Friday. */
const WORK_DAYS = [0, 1, 2, 3, 4];
/** Characters of the hash that tell a visit from those of other registers. */
const MARK_LENGTH = 6;

/** The hours of a visit with its way [h]. */
export const visitHours = ({ items, travelPersonHours }: Pick<Visit, 'items' | 'travelPersonHours'>): number =>
  items.reduce((sum, { personHours }) => sum + personHours, travelPersonHours);

/** The plan whose visits are to be proposed. */
export interface PlanToAccept {
  readonly number: number;
  readonly madeAt: string;
  readonly firstWeek: CalendarDay;
  readonly visits: readonly WeekVisit[];
}

/** Lays out the weeks of the crews of a register. */
export function layingOut(
  crews: readonly CrewInRegister[],
  places: ReadonlyMap<string, TakenDays['place']>,
): AcceptInputs['layOut'] {
  const hoursOn = crewHoursOn(crews);
  const placeAt = (siteRef: string): TakenDays['place'] => places.get(siteRef) ?? null;
  return ({ crewRef, monday, beside }, requests) => {
    return layOutDays(
      {
        monday,
        personHoursByDay: WORK_DAYS.map((day) => hoursOn(crewRef, addDays(monday, day))),
        taken: beside.map((visit) => ({
          ...visit,
          place: placeAt(visit.siteRef),
          personHours: hoursByWeek(visit, hoursOn).get(monday) ?? 0,
        })),
      },
      requests.map((request) => ({ ...request, place: placeAt(request.siteRef) })),
    );
  };
}

/** What accepting a plan would make of the visits that stand; nothing is stored. */
export async function acceptanceOf(
  db: RegisterDb,
  { number, madeAt, firstWeek, visits }: PlanToAccept,
  { today, at }: { readonly today: CalendarDay; readonly at: string },
): Promise<AcceptedVisits> {
  const sites = await listRecords(db, 'sites');
  return acceptPlan({
    planId: number,
    at,
    today,
    firstWeek,
    weekVisits: visits,
    standing: await listVisits(db, { states: ['proposed', 'confirmed'] }),
    doneFences: await fencesDoneSince(db, madeAt),
    layOut: layingOut(await loadCrews(db), new Map(sites.map((site) => [site.ref, placeOf(site)]))),
    newUid: ({ crewRef, siteRef, week }, index) => {
      const mark = sha256(canonicalJson({ madeAt, crewRef, siteRef, week, index })).slice(0, MARK_LENGTH);
      return `V${number}-${index}-${mark}`;
    },
  });
}
