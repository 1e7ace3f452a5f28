import { NO_FENCES, type SiteStanding, standingsOfSites } from '../../register/board-standings.ts';
import { recordsWhereIn } from '../../register/record-store.ts';
import { keptPlan } from '../../service/report/kept-plans.ts';
import type { PlanResult } from '../../service/report/plan-report-of.ts';
import type { ReportParts } from '../../service/report/report-result.ts';
import type { PageLanguage } from '../frame/page-language.ts';

/** How the fences of one site stand, and the plan of what is kept there in common. */
export interface BoardSite extends SiteStanding {
  readonly ref: string;
  readonly name: string;
  readonly plan: PlanResult;
}

/** The sites that a board sees, by name. */
export async function boardSites(
  parts: ReportParts,
  by: {
    readonly visible: readonly string[];
    readonly years: number;
    readonly language: PageLanguage;
  },
): Promise<readonly BoardSite[]> {
  const { register } = parts;
  const sites = await recordsWhereIn(register.db, 'sites', 'ref', by.visible);
  const standing = await standingsOfSites(register, by.visible);
  const shown: BoardSite[] = [];
  for (const { ref, name } of sites.toSorted((a, b) => (a.name < b.name ? -1 : 1))) {
    const plan = await keptPlan(parts, {
      of: { kind: 'site', ref },
      years: by.years,
      currency: null,
      language: by.language,
    });
    shown.push({ ref, name, ...(standing.get(ref) ?? NO_FENCES), plan });
  }
  return shown;
}
