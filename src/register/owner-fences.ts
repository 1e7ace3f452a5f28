import type { FenceRecord } from './fence-record.ts';
import { type RegisterDb, recordsWhereIn } from './record-store.ts';

/** True where a fence belongs to an owner, alone or with another. */
export const isFenceOf = ({ ownerRef, secondOwnerRef }: FenceRecord, owner: string): boolean =>
  ownerRef === owner || secondOwnerRef === owner;

/** The fences that belong to an owner, alone or with another, by ref. */
export async function fencesOfOwner(db: RegisterDb, owner: string): Promise<readonly FenceRecord[]> {
  const rows = await db
    .selectFrom('fences')
    .select('ref')
    .where((eb) => eb.or([eb('owner_ref', '=', owner), eb('second_owner_ref', '=', owner)]))
    .execute();
  return recordsWhereIn(
    db,
    'fences',
    'ref',
    rows.map(({ ref }) => ref),
  );
}
