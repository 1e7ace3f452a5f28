import type { FenceFacts } from '../../forecast/fence-facts.ts';
import type { FenceForecast } from '../../forecast/fence-forecast.ts';
import { type PostOutlook, postOutlook } from '../../forecast/post-outlook.ts';
import type { Register } from '../../register/database.ts';
import { type FenceEvidence, loadFenceEvidence } from '../../register/evidence-store.ts';
import { loadFenceFacts } from '../../register/fence-facts-store.ts';
import { type FenceVisit, listFenceVisits, listToldNotices, type ToldNotice } from '../../register/fence-history.ts';
import type { FenceRecord } from '../../register/fence-record.ts';
import type { StoredForecast } from '../../register/forecast-store.ts';
import { forecastOf, loadStoredForecasts } from '../../register/forecast-store.ts';
import { readRecord } from '../../register/record-store.ts';
import type { SiteRecord } from '../../register/site-record.ts';
import { listStandingTurns, type StandingTurn } from '../../register/standing-history.ts';

/** Everything one fence's page shows. */
export interface FenceDetail {
  readonly fence: FenceRecord;
  readonly site: SiteRecord;
  readonly owners: readonly string[];
  readonly facts: FenceFacts;
  readonly evidence: FenceEvidence;
  readonly notices: readonly ToldNotice[];
  readonly visits: readonly FenceVisit[];
  readonly standings: readonly StandingTurn[];
  /** Null until the fence has been swept. */
  readonly swept: { readonly stored: StoredForecast; readonly forecast: FenceForecast } | null;
}

/** Seasons at which posts are drawn cut through: now, and in 5 and 10 seasons. */
const DRAWN_SEASONS: readonly number[] = [1, 6, 11];

/**
 * The posts of a fence in the seasons in which they are drawn, season 1 being that of its last forecast; none where what is
 * recorded by now contradicts itself, which the next sweep tells of.
 */
export function postsDrawn(detail: FenceDetail): readonly PostOutlook[] {
  const { facts, swept } = detail;
  if (!swept) return [];
  try {
    return postOutlook(facts, Number(swept.stored.seasonOne.slice(0, 4)), DRAWN_SEASONS);
  } catch (error) {
    if (error instanceof RangeError) return [];
    throw error;
  }
}

/** Loads one fence with its site, owners, works, evidence, notices and last forecast; null where the register has no such fence. */
export async function loadFenceDetail(register: Register, ref: string): Promise<FenceDetail | null> {
  const fence = await readRecord(register.db, 'fences', ref);
  if (!fence) return null;
  const ownerRefs = [fence.ownerRef, ...(fence.secondOwnerRef === null ? [] : [fence.secondOwnerRef])];
  const [site, facts, evidence, stored, notices, visits, standings, ...owners] = await Promise.all([
    readRecord(register.db, 'sites', fence.siteRef),
    loadFenceFacts(register, [ref]),
    loadFenceEvidence(register.db, [ref]),
    loadStoredForecasts(register, [ref]),
    listToldNotices(register, ref),
    listFenceVisits(register, ref),
    listStandingTurns(register, ref),
    ...ownerRefs.map((owner) => readRecord(register.db, 'owners', owner)),
  ]);
  const known = facts.get(ref);
  if (!site || !known) throw new Error(`the register lacks the site or the facts of fence ${ref}`);
  const last = stored.get(ref);
  return {
    fence,
    site,
    owners: owners.map((owner, index) => owner?.name ?? ownerRefs[index] ?? ''),
    facts: known,
    evidence: evidence.get(ref) ?? { inspections: [], outcomes: [] },
    notices,
    visits,
    standings,
    swept: last ? { stored: last, forecast: forecastOf(last) } : null,
  };
}
