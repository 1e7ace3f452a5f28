import { NO_FENCES, type SiteStanding, standingsOfSites } from '../../register/board-standings.ts';
import { recordsWhereIn } from '../../register/record-store.ts';
import { inTime } from '../../service/in-time.ts';
import type { LongWork } from '../../service/long-work.ts';
import { type KeptPlanParts, keptPlan } from '../../service/report/kept-plans.ts';
import type { PlanResult } from '../../service/report/plan-report-of.ts';
import type { PageLanguage } from '../frame/page-language.ts';

/** How the fences of one site stand, and the plan of what is kept there in common. */
export interface BoardSite extends SiteStanding {
  readonly ref: string;
  readonly name: string;
  /** Null while it is being worked out. */
  readonly plan: PlanResult | null;
}

/** The sites that a board sees, by name. */
export async function boardSites(
  parts: KeptPlanParts & { readonly work: Pick<LongWork, 'patienceMs'> },
  by: {
    readonly visible: readonly string[];
    readonly years: number;
    readonly language: PageLanguage;
  },
): Promise<readonly BoardSite[]> {
  const { register, work } = parts;
  let left = work.patienceMs;
  const sites = await recordsWhereIn(register.db, 'sites', 'ref', by.visible);
  const standing = await standingsOfSites(register, by.visible);
  const shown: BoardSite[] = [];
  for (const { ref, name } of sites.toSorted((a, b) => (a.name < b.name ? -1 : 1))) {
    const request = { of: { kind: 'site', ref } as const, years: by.years, currency: null, language: by.language };
    const plan = await inTime(keptPlan(parts, request), Math.min(left, work.patienceMs));
    // the page waits once, not once for every site
    if (plan === null) left = 0;
    shown.push({ ref, name, ...(standing.get(ref) ?? NO_FENCES), plan });
  }
  return shown;
}
