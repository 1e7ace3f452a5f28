import { sql } from 'kysely';
import type { Register } from './database.ts';

/** A fence that is recorded dangerous, and what was found there. */
interface DangerousFence {
  readonly fenceRef: string;
  readonly siteName: string;
  /** What was found at which post, in the order of the posts. */
  readonly findings: readonly DangerFinding[];
  /** True where some of it was entered after the last sweep began. */
  readonly sinceSweep: boolean;
}

/** What makes a post dangerous. */
export interface DangerFinding {
  readonly found: 'closed off' | 'broken' | 'leaning';
  readonly post: number;
}

/** The fences that are named, and how many there are. */
export interface DangerousFences {
  readonly named: readonly DangerousFence[];
  readonly total: number;
}

interface DangerRow {
  readonly fenceRef: string;
  readonly siteName: string;
  readonly findings: string;
  readonly sinceSweep: number;
  readonly total: number;
}

/** Takes findings apart: `closed off 3, broken 4; told 2026-11-24|broken 5`; each once. */
function findingsOf(text: string): readonly DangerFinding[] {
  const parts = new Set(text.match(/(?:closed off|broken|leaning) \d+/g));
  return [...parts]
    .map((part) => ({
      found: part.replace(/ \d+$/, '') as DangerFinding['found'],
      post: Number(part.replace(/^\D+/, '')),
    }))
    .sort((a, b) => a.post - b.post);
}

/**
 * The fences that are recorded dangerous: those of which the office has an open notice, and those of which a post was
 * entered as broken or closed off since the last sweep began. The latter come first, then the newest.
 * @param since when that sweep began (ISO 8601, UTC); empty where there was none
 * @param most fences that are named
 */
export async function listDangerousFences(
  { db }: Register,
  { since, most }: { readonly since: string; readonly most: number },
): Promise<DangerousFences> {
  const { rows } = await sql<DangerRow>`
    with found as (
      select inspections.fence_ref, 1 as fresh, max(readings.updated_at) as at,
        group_concat(case when readings.closed_off = 1 then 'closed off ' else 'broken ' end || readings.post, '|') as findings
      from readings join inspections on inspections.ref = readings.inspection_ref
      where (readings.closed_off = 1 or readings.groundline_kind = 'broken') and readings.updated_at > ${since}
      group by inspections.fence_ref
      union all
      select fence_ref, 0, max(created_at), group_concat(occasion, '|')
      from office_notices where settled_at is null and matter = 'dangerous'
      group by fence_ref
    )
    select found.fence_ref as fenceRef, sites.name as siteName, max(fresh) as sinceSweep,
      group_concat(findings, '|') as findings, count(*) over () as total
    from found join fences on fences.ref = found.fence_ref join sites on sites.ref = fences.site_ref
    group by found.fence_ref
    order by max(fresh) desc, max(at) desc, found.fence_ref
    limit ${most}`.execute(db);
  return {
    named: rows.map(({ fenceRef, siteName, findings, sinceSweep }) => ({
      fenceRef,
      siteName,
      findings: findingsOf(findings),
      sinceSweep: sinceSweep === 1,
    })),
    total: rows[0]?.total ?? 0,
  };
}
