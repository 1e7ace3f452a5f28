import { listPlans, newestPlanNumber, readPlan, type StoredPlan } from '../register/plan-store.ts';
import { listRecords } from '../register/record-store.ts';
import { readSettings } from '../register/settings-store.ts';
import { acceptSeasonPlan } from '../service/accept-season-plan.ts';
import { makeSeasonPlan } from '../service/make-season-plan.ts';
import { storeSeasonPlan } from '../service/store-season-plan.ts';
import { CAUTION_LIST } from './cautions.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { configOf, withExistingRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';
import { planJson, planText } from './plan-text.ts';
import { acceptedText, planListText, storedPlanText } from './stored-plan-text.ts';
import { counter, jsonText } from './terminal.ts';
import { type ActOptions, actOf } from './visit-act.ts';

/** Options of `plan`. */
export interface PlanOptions extends GlobalOptions {
  readonly weeks?: number;
  readonly dryRun?: boolean;
  readonly json?: boolean;
}

/** Options of `plan accept`. */
export interface PlanAcceptOptions extends GlobalOptions, ActOptions {
  readonly json?: boolean;
}

/** Makes the plan for the coming season, stores it unless it is only to be seen, and prints it by week and crew. */
export async function runPlan(context: CliContext, options: PlanOptions): Promise<void> {
  const { terminal, clock } = context;
  const progress = counter(terminal, 'Planning:');
  try {
    const { made, kept } = await withExistingRegister(configOf(context, options), async (register) => {
      const plan = await makeSeasonPlan(register, {
        now: clock,
        weeks: options.weeks ?? null,
        onProgress: (done, total) =>
          progress.show(done < total ? `${done} of ${total} fences looked at` : 'filling the weeks of the crews'),
      });
      progress.end();
      if (plan.crews.length === 0) {
        throw new CliError(
          EXIT.refused,
          'the register holds no crew, so there are no weeks to fill',
          'import crews and crew-members (docs/csv.md), then plan again',
        );
      }
      return {
        made: plan,
        kept: await storeSeasonPlan(register, plan, { now: clock, store: options.dryRun !== true }),
      };
    });
    terminal.out(
      options.json ? jsonText({ ...(planJson(made, kept) as object), cautions: CAUTION_LIST }) : planText(made, kept),
    );
  } finally {
    progress.end();
  }
}

const noPlan = (number: number | null): CliError =>
  new CliError(
    EXIT.notFound,
    number === null ? 'no season plan has been made yet' : `there is no season plan ${number}`,
    number === null ? 'make one with "stormpale plan"' : '"stormpale plan list" shows those that there are',
  );

/** Shows a plan as it was stored: that of the number, else the newest. */
export async function runPlanShow(
  context: CliContext,
  number: number | undefined,
  options: PlanOptions,
): Promise<void> {
  const { plan, names } = await withExistingRegister(configOf(context, options), async ({ db }) => {
    const wanted = number ?? (await newestPlanNumber(db));
    const found: StoredPlan | null = wanted === null ? null : await readPlan(db, wanted);
    if (!found) throw noPlan(wanted);
    const namesOf = async (kind: 'sites' | 'crews'): Promise<ReadonlyMap<string, string>> =>
      new Map((await listRecords(db, kind)).map(({ ref, name }) => [ref, name]));
    const { currency } = await readSettings(db);
    return { plan: found, names: { siteNames: await namesOf('sites'), crewNames: await namesOf('crews'), currency } };
  });
  context.terminal.out(options.json ? jsonText({ ...plan, cautions: CAUTION_LIST }) : storedPlanText(plan, names));
}

/** Lists the plans that were made, oldest first. */
export async function runPlanList(context: CliContext, options: PlanOptions): Promise<void> {
  const plans = await withExistingRegister(configOf(context, options), ({ db }) => listPlans(db));
  context.terminal.out(
    options.json
      ? jsonText(plans.map(({ content, ...plan }) => ({ ...plan, visits: content.visits.length })))
      : planListText(plans),
  );
}

/** Accepts a plan: its visits become proposed ones. */
export async function runPlanAccept(context: CliContext, number: number, options: PlanAcceptOptions): Promise<void> {
  const act = actOf(options);
  const result = await withExistingRegister(configOf(context, options), (register) =>
    acceptSeasonPlan(register, { number, now: context.clock, ...act }),
  );
  switch (result.kind) {
    case 'no such plan':
      throw noPlan(number);
    case 'accepted before':
      throw new CliError(
        EXIT.refused,
        `plan ${number} was accepted ${result.plan.acceptedAt?.slice(0, 10) ?? ''}${result.plan.state === 'superseded' ? ', and another one after it' : ''}`,
        'nothing was changed; make a new plan with "stormpale plan" to change what is proposed',
      );
    case 'begun already':
      throw new CliError(
        EXIT.refused,
        `plan ${number} begins with the week of ${result.plan.firstWeek}, and today is ${result.today}`,
        'nothing was changed; make a new plan with "stormpale plan"',
      );
    case 'accepted':
      context.terminal.out(options.json ? jsonText({ number, ...result.visits }) : acceptedText(number, result.visits));
  }
}
