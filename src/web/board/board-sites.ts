import type { FenceStanding } from '../../forecast/fence-forecast.ts';
import type { Register } from '../../register/database.ts';
import { loadStoredStates } from '../../register/forecast-store.ts';
import { listRecords } from '../../register/record-store.ts';
import { keptPlan } from '../../service/report/kept-plans.ts';
import type { PlanResult } from '../../service/report/plan-report-of.ts';
import type { ReportParts } from '../../service/report/report-result.ts';
import type { PageLanguage } from '../frame/page-language.ts';

/** How the fences of one site stand, and the plan of what is kept there in common. */
export interface BoardSite {
  readonly ref: string;
  readonly name: string;
  readonly total: number;
  readonly unswept: number;
  readonly counts: Readonly<Record<FenceStanding, number>>;
  /** First season in which a fence that holds its design gust now goes short, and which do; null where none does. */
  readonly next: { readonly season: string; readonly refs: readonly string[] } | null;
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
  const sites = (await listRecords(register.db, 'sites')).filter(({ ref }) => by.visible.includes(ref));
  const standing = await standingsOf(register, by.visible);
  const shown: BoardSite[] = [];
  for (const { ref, name } of sites.toSorted((a, b) => (a.name < b.name ? -1 : 1))) {
    const plan = await keptPlan(parts, {
      of: { kind: 'site', ref },
      years: by.years,
      currency: null,
      language: by.language,
    });
    shown.push({ ref, name, ...(standing.get(ref) ?? emptySite()), plan });
  }
  return shown;
}

type Standing = Pick<BoardSite, 'total' | 'unswept' | 'counts' | 'next'>;

const emptySite = (): Standing => ({
  total: 0,
  unswept: 0,
  counts: { clear: 0, closing: 0, short: 0, 'short from new': 0 },
  next: null,
});

async function standingsOf(register: Register, visible: readonly string[]): Promise<ReadonlyMap<string, Standing>> {
  const fences = (await listRecords(register.db, 'fences')).filter(({ siteRef }) => visible.includes(siteRef));
  const states = await loadStoredStates(
    register,
    fences.map(({ ref }) => ref),
  );
  const bySite = new Map<string, Standing>();
  for (const { ref, siteRef } of fences) {
    const known = bySite.get(siteRef) ?? emptySite();
    const state = states.get(ref);
    const holds = state !== undefined && (state.standing === 'clear' || state.standing === 'closing');
    bySite.set(siteRef, {
      total: known.total + 1,
      unswept: known.unswept + (state ? 0 : 1),
      counts: state ? { ...known.counts, [state.standing]: known.counts[state.standing] + 1 } : known.counts,
      next: holds && state.shortSeason !== null ? earlier(known.next, state.shortSeason, ref) : known.next,
    });
  }
  return bySite;
}

/** The earlier of two seasons with its fences; both fences where it is the same. */
function earlier(next: BoardSite['next'], season: string, ref: string): NonNullable<BoardSite['next']> {
  if (next === null || season < next.season) return { season, refs: [ref] };
  return season === next.season ? { season, refs: [...next.refs, ref] } : next;
}
