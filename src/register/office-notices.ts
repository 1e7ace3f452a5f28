import type { Kysely } from 'kysely';
import type { Register } from './database.ts';
import type { SweptFence } from './swept-fence.ts';
import type { RegisterTables } from './tables.ts';

/** What the office is told of a fence itself. Times are ISO text in UTC. */
export interface OfficeNotice {
  readonly id: number;
  readonly fenceRef: string;
  readonly siteName: string;
  readonly matter: string;
  readonly occasion: string;
  readonly createdAt: string;
}

/** Writes what the office is told of one fence, within the sweep's transaction; what it was told before is not told again. */
export async function writeOfficeNotices(
  tx: Kysely<RegisterTables>,
  chunk: { readonly sweepId: number; readonly at: string },
  fence: Pick<SweptFence, 'fenceRef' | 'office'>,
): Promise<void> {
  for (const { matter, occasion, facts } of fence.office) {
    await tx
      .insertInto('office_notices')
      .values({
        fence_ref: fence.fenceRef,
        matter,
        occasion,
        facts,
        sweep_id: chunk.sweepId,
        created_at: chunk.at,
        settled_at: null,
      })
      .onConflict((conflict) => conflict.doNothing())
      .execute();
  }
}

const openNotices = ({ db }: Register) =>
  db
    .selectFrom('office_notices')
    .innerJoin('fences', 'fences.ref', 'office_notices.fence_ref')
    .innerJoin('sites', 'sites.ref', 'fences.site_ref')
    .select([
      'office_notices.id as id',
      'fences.ref as fenceRef',
      'sites.name as siteName',
      'matter',
      'occasion',
      'office_notices.created_at as createdAt',
    ])
    .where('settled_at', 'is', null)
    .orderBy('office_notices.id');

/** What the office was told and has not settled, oldest first. */
export const listOfficeNotices = (register: Register): Promise<readonly OfficeNotice[]> =>
  openNotices(register).execute();

/** The same behind a number, at most so many. */
export const officeNoticesAfter = (
  register: Register,
  after: number,
  limit: number,
): Promise<readonly OfficeNotice[]> =>
  openNotices(register).where('office_notices.id', '>', after).limit(limit).execute();

/** Notes that the office has dealt with one of its notices. Returns false where there is none of that number to settle. */
export async function settleOfficeNotice(
  { db }: Register,
  id: number,
  settled: { readonly at: string; readonly by: string },
): Promise<boolean> {
  const result = await db
    .updateTable('office_notices')
    .set({ settled_at: settled.at, settled_by: settled.by })
    .where('id', '=', id)
    .where('settled_at', 'is', null)
    .executeTakeFirst();
  return result.numUpdatedRows === 1n;
}
