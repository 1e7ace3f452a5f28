import type { Register } from '../register/database.ts';
import { listVisits } from '../register/visit-store.ts';
import { listVisitHours } from '../register/visit-work-store.ts';
import type { PlanJob } from '../season/plan/plan-problem.ts';
import { type PlacedJob, type WeekChoice, weekChoices } from '../season/plan/week-choices.ts';
import { seasonProblem } from '../season/season-problem.ts';
import { whyNotNow } from '../season/visit/change-visit.ts';
import { correctedHours, withCorrectedHours } from '../season/visit/corrected-hours.ts';
import type { Visit, VisitItem } from '../season/visit/visit.ts';
import { hoursByWeek } from '../season/visit/visits-that-stand.ts';
import { mondayOf } from '../season/visit/week-of-day.ts';
import { addDays, type CalendarDay } from '../units/calendar-day.ts';
import type { Clock } from './clock.ts';
import { officeToday } from './crew-sheets.ts';
import { weeksAhead } from './make-season-plan.ts';
import { mondayFrom, planCrews, seasonFences } from './season-inputs.ts';
import { type CrewInRegister, crewHoursOn, loadCatalogue, loadCrews } from './season-register.ts';

/** Least hours of a job in a problem [h]. */
const LEAST_HOURS = 1e-3;

/** The weeks to which a fence of a visit can be given, and what they cost. */
export interface WeekChoices {
  readonly kind: 'choices';
  readonly visit: Visit;
  readonly item: VisitItem;
  /** By week and crew. */
  readonly choices: readonly WeekChoice[];
  /** Every proposed and confirmed visit. */
  readonly open: readonly Visit[];
  /** Hours of a crew's people on the way to the site [h]. */
  readonly travelPersonHours: (crewRef: string) => number;
}

/** The same, or why there are none. */
export type WeekChoicesResult = WeekChoices | { readonly kind: 'refused'; readonly reason: string };

const refused = (reason: string): WeekChoicesResult => ({ kind: 'refused', reason });

/** A fence that stays where it is: only its hours and its way count. */
const fixedJob = (ref: string, siteRef: string, { optionKey, personHours }: VisitItem, weeks: number): PlanJob => ({
  ref,
  siteRef,
  region: '',
  mustRank: 0,
  promised: null,
  previous: null,
  options: [
    {
      key: optionKey,
      personHours: Math.max(personHours, LEAST_HOURS),
      cost: 0,
      benefitByWeek: new Array<number>(weeks).fill(0),
      barsByWeek: Array.from({ length: weeks }, () => []),
      skill: null,
      satisfiesMust: false,
      note: null,
    },
  ],
});

/** Hours of the crews without those that are promised already [h]. */
function hoursWithoutPromised(
  crews: readonly CrewInRegister[],
  open: readonly Visit[],
): (crewRef: string, week: CalendarDay) => number {
  const taken = new Map<string, number>();
  for (const visit of open.filter(({ state }) => state === 'confirmed')) {
    for (const [monday, hours] of hoursByWeek(visit, crewHoursOn(crews))) {
      const key = `${visit.crewRef} ${monday}`;
      taken.set(key, (taken.get(key) ?? 0) + hours);
    }
  }
  return (crewRef, week) => taken.get(`${crewRef} ${week}`) ?? 0;
}

/**
 * To which weeks of which crews a fence of a proposed visit can be given, each with what that costs, counted as the season
 * plan counts with everything else left where it is. Looks at that one fence anew.
 */
export async function choicesFor(
  register: Register,
  { uid, fenceRef, now }: { readonly uid: string; readonly fenceRef: string; readonly now: Clock },
): Promise<WeekChoicesResult> {
  const { db } = register;
  const open = await listVisits(db, { states: ['proposed', 'confirmed'] });
  const visit = open.find((each) => each.uid === uid);
  if (!visit) return refused('there is no such visit that is still to come');
  if (visit.state !== 'proposed')
    return refused(
      whyNotNow(visit, 'confirmed') ?? 'its day is promised to the owner: confirm the visit for another day instead',
    );
  const item = visit.items.find((each) => each.fenceRef === fenceRef);
  if (!item) return refused(`fence ${fenceRef} is not on this visit`);
  const today = await officeToday(register, now);
  const firstWeek = mondayFrom(addDays(today, 1));
  if (mondayOf(visit.firstDay) < firstWeek)
    return refused('it lies before next Monday: confirm the visit for another day instead');
  const asListed = await loadCatalogue(db);
  const catalogue = withCorrectedHours(asListed, correctedHours(await listVisitHours(db), asListed));
  const { fences, sites, unseen } = await seasonFences(register, {
    now,
    catalogue,
    kept: new Map(),
    only: [fenceRef],
    onProgress: () => undefined,
  });
  if (fences.length === 0) return refused(unseen[0]?.message ?? `fence ${fenceRef} is not in the register`);
  const crews = await loadCrews(db);
  const proposed = open.filter(({ state, firstDay }) => state === 'proposed' && mondayOf(firstDay) >= firstWeek);
  const latest = proposed.reduce((last, { firstDay }) => (firstDay > last ? firstDay : last), firstWeek);
  const weeks = weeksAhead(firstWeek, null, fences, mondayOf(latest));
  const promised = hoursWithoutPromised(crews, open);
  const planned = planCrews(crews, sites, weeks);
  const problem = seasonProblem({
    weeks,
    crews: planned.map((crew) => ({
      ...crew,
      personHoursByWeek: crew.personHoursByWeek.map((hours, week) =>
        Math.max(0, hours - promised(crew.ref, weeks[week]!)),
      ),
    })),
    fences,
    catalogue,
    changePenalty: 0,
  });
  const [job] = problem.jobs;
  if (!job?.options.some(({ key }) => key === item.optionKey))
    return refused('what is best done at this fence has changed since it was planned; make a new plan');
  const isMine = (other: Visit, ref: string): boolean => other.uid === uid && ref === fenceRef;
  const stay = proposed.flatMap((other) =>
    other.items
      .filter((each) => !isMine(other, each.fenceRef))
      .map((each) => ({ ref: `${other.uid} ${each.fenceRef}`, other, each })),
  );
  const mine: PlanJob = {
    ...job,
    options: job.options.map((option) =>
      option.key === item.optionKey ? { ...option, personHours: Math.max(item.personHours, LEAST_HOURS) } : option,
    ),
  };
  const placed: readonly PlacedJob[] = [
    { jobRef: fenceRef, week: mondayOf(visit.firstDay), crewRef: visit.crewRef, optionKey: item.optionKey },
    ...stay.map(({ ref, other, each }) => ({
      jobRef: ref,
      week: mondayOf(other.firstDay),
      crewRef: other.crewRef,
      optionKey: each.optionKey,
    })),
  ];
  return {
    kind: 'choices',
    visit,
    item,
    choices: weekChoices(
      {
        ...problem,
        jobs: [mine, ...stay.map(({ ref, other, each }) => fixedJob(ref, other.siteRef, each, weeks.length))],
      },
      placed,
      fenceRef,
    ),
    open,
    travelPersonHours: (crewRef) =>
      planned.find(({ ref }) => ref === crewRef)?.travel.find(({ siteRef }) => siteRef === visit.siteRef)
        ?.personHours ?? 0,
  };
}
