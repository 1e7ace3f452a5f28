import { changeCount } from '../../register/register-changes.ts';
import { canonicalJson } from '../canonical-json.ts';
import { isoUtc } from '../clock.ts';
import { currencyAsked } from '../currency-asked.ts';
import { keptAnswers } from '../kept-answers.ts';
import type { LongWork } from '../long-work.ts';
import { loadCatalogue } from '../season-register.ts';
import type { PlanRequest, PlanResult } from './plan-report-of.ts';
import type { ReportParts } from './report-result.ts';

/** What a plan is made with, each of its fences in a thread beside the pages. */
export interface KeptPlanParts extends Pick<ReportParts, 'register' | 'now'> {
  readonly work: Pick<LongWork, 'finish'>;
}

/** Plans that are kept at a time, of each register. */
const MOST_KEPT = 12;

const kept = keptAnswers<PlanResult>(MOST_KEPT);

/**
 * A plan as `loadPlan` makes it, made beside the pages and once for the same records, settings, prices, day and terms: pages of one board ask for the
 * same plan several times, and each fence of it is a forecast.
 */
export async function keptPlan(parts: KeptPlanParts, asked: PlanRequest): Promise<PlanResult> {
  const { register, now, work } = parts;
  const request = { ...asked, currency: await currencyAsked(register.db, asked.currency) };
  const [changes, catalogue] = await Promise.all([changeCount(register.db), loadCatalogue(register.db)]);
  // zones differ: a plan is kept for an hour of the clock, so that every site's own midnight is kept
  const key = canonicalJson({ changes, catalogue, hour: isoUtc(now()).slice(0, 13), request });
  return kept(register, key, () => work.finish('plan money', request));
}
