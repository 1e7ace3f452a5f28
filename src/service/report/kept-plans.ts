import type { Register } from '../../register/database.ts';
import { changeCount } from '../../register/register-changes.ts';
import { canonicalJson } from '../canonical-json.ts';
import { isoUtc } from '../clock.ts';
import { currencyAsked } from '../currency-asked.ts';
import { loadCatalogue } from '../season-register.ts';
import { loadPlan, type PlanRequest, type PlanResult } from './plan-report-of.ts';
import type { ReportParts } from './report-result.ts';

/** Plans that are kept at a time, of each register. */
const MOST_KEPT = 12;

const kept = new WeakMap<Register, Map<string, Promise<PlanResult>>>();

/**
 * A plan as `loadPlan` makes it, made once for the same records, settings, prices, day and terms: pages of one board ask for the
 * same plan several times, and each fence of it is a forecast.
 */
export async function keptPlan(parts: ReportParts, asked: PlanRequest): Promise<PlanResult> {
  const { register, now } = parts;
  const request = { ...asked, currency: await currencyAsked(register.db, asked.currency) };
  const [changes, catalogue] = await Promise.all([changeCount(register.db), loadCatalogue(register.db)]);
  // zones differ: a plan is kept for an hour of the clock, so that every site's own midnight is kept
  const key = canonicalJson({ changes, catalogue, hour: isoUtc(now()).slice(0, 13), request });
  const plans = kept.get(register) ?? new Map<string, Promise<PlanResult>>();
  kept.set(register, plans);
  const known = plans.get(key);
  if (known) return known;
  const made = loadPlan(parts, request);
  plans.set(key, made);
  made.catch(() => plans.delete(key));
  for (const oldest of [...plans.keys()].slice(0, -MOST_KEPT)) plans.delete(oldest);
  return made;
}
