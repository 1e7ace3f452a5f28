import type { RegisterDb } from './record-store.ts';

/**
 * Takes one reading out of an inspection, as whoever entered it by mistake wants it; an inspection of which nothing is left and
 * that no visit names goes with it. Works within a transaction of the caller. False where there is no such reading.
 */
export async function removeReading(tx: RegisterDb, inspectionRef: string, post: number): Promise<boolean> {
  const gone = await tx
    .deleteFrom('readings')
    .where('inspection_ref', '=', inspectionRef)
    .where('post', '=', post)
    .executeTakeFirst();
  if (gone.numDeletedRows === 0n) return false;
  await tx
    .deleteFrom('inspections')
    .where('ref', '=', inspectionRef)
    .where((eb) =>
      eb.not(eb.exists(eb.selectFrom('readings').select('post').where('inspection_ref', '=', inspectionRef))),
    )
    .where((eb) =>
      eb.not(
        eb.exists(
          eb
            .selectFrom('visit_entries')
            .select('uid')
            .where('kind', '=', 'inspection')
            .where('ref', '=', inspectionRef),
        ),
      ),
    )
    .execute();
  return true;
}
