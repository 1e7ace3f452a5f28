import { sql } from 'kysely';
import type { MustRemedy } from '../season/must-remedy.ts';
import type { LeftOutReason, NearestOption, SeasonPlan, UnservedJob } from '../season/plan/season-plan.ts';
import type { SeasonRisk } from '../season/season-risk.ts';
import type { HoursCorrection } from '../season/visit/corrected-hours.ts';
import type { VisitWorks } from '../season/visit/visit.ts';
import type { WeekVisit } from '../season/visit/visits-of-plan.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import type { RegisterDb } from './record-store.ts';
import type { VisitAct } from './visit-store.ts';

/** A fence for which a plan does nothing, with what is known of the reason; plans of before keep the reason alone. */
export interface StoredLeftOut extends Pick<UnservedJob, 'jobRef' | 'reason'> {
  /** Numbers of the works that came nearest, where rules or hours stood in their way. */
  readonly nearest?: NearestOption | null;
  /** What those works are. */
  readonly works?: readonly VisitWorks[];
  /** Of a fence that must be served where no works of the catalogue serve it. */
  readonly remedy?: MustRemedy | null;
}

/** What is kept of a season plan. */
export interface PlanContent {
  readonly visits: readonly WeekVisit[];
  readonly risk: SeasonRisk;
  readonly stages: SeasonPlan['stages'];
  readonly method: SeasonPlan['method'];
  readonly safetyTimeStruck: boolean;
  /** Fences whose promised date it keeps: they have their visits. */
  readonly promised: readonly string[];
  readonly brokenPromises: SeasonPlan['brokenPromises'];
  /** Fences that must be served and are not. */
  readonly unservedMusts: readonly (StoredLeftOut & Pick<UnservedJob, 'mustRank'>)[];
  /** Fences that need not be served and are not, by reason; plans of before have no such list, or name none of them. */
  readonly unservedOthers?: readonly {
    readonly reason: LeftOutReason;
    readonly fences: number;
    readonly named?: readonly StoredLeftOut[];
  }[];
  /** Fences that it visits, not to rebuild them, though their rails and boards count as worn out; plans of before have no such list. */
  readonly wornOut?: readonly { readonly fenceRef: string; readonly ageYears: number }[];
  /** How hours that crews used have corrected those of the catalogue. */
  readonly hours: readonly HoursCorrection[];
}

/** A season plan as it was made. */
export interface NewPlan {
  readonly madeAt: string;
  readonly asOf: CalendarDay;
  readonly firstWeek: CalendarDay;
  readonly weeks: number;
  readonly modelVersion: string;
  readonly content: PlanContent;
}

/** A season plan of the register; `accepted` is the one in force, `superseded` one that was before. */
export interface StoredPlan extends NewPlan, VisitAct {
  readonly number: number;
  readonly state: 'made' | 'accepted' | 'superseded';
  readonly acceptedAt: string | null;
}

type PlanRow = Awaited<ReturnType<typeof planRows>>[number];

const planRows = (db: RegisterDb) => db.selectFrom('season_plans').selectAll().orderBy('number').execute();

const planOf = (row: PlanRow): StoredPlan => ({
  number: row.number,
  madeAt: row.made_at,
  asOf: row.as_of,
  firstWeek: row.first_week,
  weeks: row.weeks,
  modelVersion: row.model_version,
  content: JSON.parse(row.content) as PlanContent,
  state: row.state,
  acceptedAt: row.accepted_at,
  by: row.by,
  because: row.because,
});

/** Stores a plan as it was made and gives its number. */
export async function storePlan(db: RegisterDb, plan: NewPlan): Promise<number> {
  const { number } = await db
    .insertInto('season_plans')
    .values({
      made_at: plan.madeAt,
      as_of: plan.asOf,
      first_week: plan.firstWeek,
      weeks: plan.weeks,
      model_version: plan.modelVersion,
      content: JSON.stringify(plan.content),
      state: 'made',
      accepted_at: null,
      by: '',
      because: '',
    })
    .returning('number')
    .executeTakeFirstOrThrow();
  return number;
}

/** Every plan that was made, oldest first. */
export const listPlans = async (db: RegisterDb): Promise<readonly StoredPlan[]> => (await planRows(db)).map(planOf);

/** A season plan as a list names it: without what is in it. */
export interface PlanHead
  extends VisitAct,
    Pick<StoredPlan, 'number' | 'asOf' | 'madeAt' | 'firstWeek' | 'weeks' | 'state' | 'acceptedAt'> {
  readonly visits: number;
  /** Fences that must be served and are not. */
  readonly unservedMusts: number;
}

const listLength = (path: string) => sql<number>`coalesce(json_array_length(content, ${path}), 0)`;

/** Every plan that was made, newest first, counted by the database. */
export const listPlanHeads = (db: RegisterDb): Promise<readonly PlanHead[]> =>
  db
    .selectFrom('season_plans')
    .select([
      'number',
      'as_of as asOf',
      'made_at as madeAt',
      'first_week as firstWeek',
      'weeks',
      'state',
      'accepted_at as acceptedAt',
      'by',
      'because',
      listLength('$.visits').as('visits'),
      listLength('$.unservedMusts').as('unservedMusts'),
    ])
    .orderBy('number', 'desc')
    .execute();

/** The plan of that number; null where there is none. */
export async function readPlan(db: RegisterDb, number: number): Promise<StoredPlan | null> {
  const row = await db.selectFrom('season_plans').selectAll().where('number', '=', number).executeTakeFirst();
  return row ? planOf(row) : null;
}

/** The number of the newest plan; null where none was made. */
export async function newestPlanNumber(db: RegisterDb): Promise<number | null> {
  const row = await db
    .selectFrom('season_plans')
    .select((eb) => eb.fn.max('number').as('number'))
    .executeTakeFirst();
  return row?.number ?? null;
}

/** Notes that a plan is in force from now on, in the place of the one before. Works within a transaction of the caller. */
export async function markAccepted(
  tx: RegisterDb,
  number: number,
  act: VisitAct & { readonly at: string },
): Promise<void> {
  await tx.updateTable('season_plans').set({ state: 'superseded' }).where('state', '=', 'accepted').execute();
  await tx
    .updateTable('season_plans')
    .set({ state: 'accepted', accepted_at: act.at, by: act.by, because: act.because })
    .where('number', '=', number)
    .execute();
}
