import type { Register } from '../register/database.ts';
import { listVisits, readVisit, visitHistory, visitUidsFrom } from '../register/visit-store.ts';
import { listVisitHours, returnedFences, visitEntries } from '../register/visit-work-store.ts';
import type { VisitState } from '../season/visit/visit.ts';
import { cancelVisit, confirmVisit, dayAtSite, missVisit, type VisitChangeResult } from '../service/change-visit.ts';
import { daysOfVisit } from '../service/visit-days.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { configOf, withExistingRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';
import { jsonText } from './terminal.ts';
import { type ActOptions, actOf } from './visit-act.ts';
import { type VisitDetails, visitLine, visitTable, visitText } from './visit-text.ts';

/** Options of every `visit` command. */
export interface VisitOptions extends GlobalOptions {
  readonly json?: boolean;
}

/** Options of `visit list`. */
export interface VisitListOptions extends VisitOptions {
  readonly crew?: string;
  readonly site?: string;
  readonly from?: string;
  readonly to?: string;
  readonly state?: readonly (VisitState | 'all')[];
}

/** Options of `visit confirm`. */
export interface VisitConfirmOptions extends VisitOptions, ActOptions {
  readonly day: string;
  readonly at?: string;
  readonly crew?: string;
  readonly sure?: boolean;
}

/** Options of `visit miss` and `visit cancel`. */
export interface VisitEndOptions extends VisitOptions, ActOptions {
  readonly because: string;
}

/** The uid that a text begins. Throws `CliError` where no visit begins so, or several do. */
export async function wholeUid({ db }: Register, text: string): Promise<string> {
  const uids = await visitUidsFrom(db, text);
  if (uids.includes(text)) return text;
  // "V1-1" is the first visit of plan 1, not the eleventh
  const whole = uids.filter((uid) => uid.startsWith(`${text}-`));
  const [uid, ...others] = whole.length === 1 ? whole : uids;
  if (uid !== undefined && others.length === 0) return uid;
  throw new CliError(
    uid === undefined ? EXIT.notFound : EXIT.usage,
    uid === undefined
      ? `no visit ${JSON.stringify(text)} in the register`
      : `${JSON.stringify(text)} begins the uid of several visits: ${uids.slice(0, 5).join(', ')}${uids.length > 5 ? ', …' : ''}`,
    '"stormpale visit list" shows the visits with their uids',
  );
}

/** Lists visits by day, crew and uid. */
export async function runVisitList(context: CliContext, options: VisitListOptions): Promise<void> {
  const { crew, site, from, to, state = ['proposed', 'confirmed'] } = options;
  const states = state.filter((each) => each !== 'all');
  const visits = await withExistingRegister(configOf(context, options), ({ db }) =>
    listVisits(db, {
      crewRef: crew,
      siteRef: site,
      from,
      to,
      states: state.includes('all') ? undefined : states,
    }),
  );
  context.terminal.out(
    options.json
      ? jsonText(visits)
      : visits.length === 0
        ? 'No such visits. Visits are proposed by "stormpale plan accept".\n'
        : visitTable(visits),
  );
}

/** Shows one visit with its history. */
export async function runVisitShow(context: CliContext, text: string, options: VisitOptions): Promise<void> {
  const details = await withExistingRegister(configOf(context, options), async (register): Promise<VisitDetails> => {
    const uid = await wholeUid(register, text);
    const { db } = register;
    const visit = await readVisit(db, uid);
    if (!visit) throw new Error(`visit ${uid} went while it was read: try again`);
    return {
      visit,
      history: await visitHistory(db, uid),
      entries: await visitEntries(db, uid),
      hours: await listVisitHours(db, uid),
      returned: await returnedFences(db, uid),
      days: await daysOfVisit(register, visit, await dayAtSite(register, visit.siteRef, context.clock)),
    };
  });
  context.terminal.out(
    options.json
      ? jsonText({ ...details, days: details.days && { ...details.days, ownerNames: undefined } })
      : visitText(details),
  );
}

function tell(
  { terminal }: CliContext,
  { json }: VisitOptions,
  result: VisitChangeResult,
  parts: { readonly uid: string; readonly next: string },
): void {
  if (result.kind === 'no such visit') throw new Error(`visit ${parts.uid} went while it was changed: try again`);
  if (result.kind !== 'changed') {
    throw new CliError(
      EXIT.refused,
      `visit ${visitLine(result.visit)}: ${result.reasons.join('; ')}`,
      result.kind === 'asked'
        ? 'Nothing was changed; choose another day or crew, or confirm it all the same with --sure.'
        : `Nothing was changed; "stormpale visit show ${parts.uid}" tells what became of it.`,
    );
  }
  if (json) {
    terminal.out(jsonText(result));
    return;
  }
  for (const doubt of result.doubts) terminal.err(`Doubtful: ${doubt}\n`);
  terminal.out(`${visitLine(result.visit)}\n${parts.next}\n`);
}

/** Promises a visit on a day. */
export async function runVisitConfirm(context: CliContext, text: string, options: VisitConfirmOptions): Promise<void> {
  const act = actOf(options);
  const { uid, result } = await withExistingRegister(configOf(context, options), async (register) => {
    const whole = await wholeUid(register, text);
    return {
      uid: whole,
      result: await confirmVisit(register, {
        uid: whole,
        now: context.clock,
        day: options.day,
        startsAt: options.at ?? null,
        crewRef: options.crew ?? null,
        sure: options.sure === true,
        ...act,
      }),
    };
  });
  tell(context, options, result, { uid, next: 'No plan moves it from now on.' });
}

const ending =
  (change: typeof missVisit) =>
  async (context: CliContext, text: string, options: VisitEndOptions): Promise<void> => {
    const act = actOf(options);
    const { uid, result } = await withExistingRegister(configOf(context, options), async (register) => {
      const whole = await wholeUid(register, text);
      return { uid: whole, result: await change(register, { uid: whole, now: context.clock, ...act }) };
    });
    tell(context, options, result, { uid, next: 'Its fences are back in the plan: stormpale plan' });
  };

/** Notes that a visit did not take place. */
export const runVisitMiss = ending(missVisit);

/** Calls a visit off. */
export const runVisitCancel = ending(cancelVisit);
