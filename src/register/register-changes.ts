import type { Register } from './database.ts';
import type { RegisterDb } from './record-store.ts';

/** How often records and settings were created, changed or deleted so far; it never goes back, whatever the clock does. */
export async function changeCount(db: RegisterDb): Promise<number> {
  return (await db.selectFrom('register_changes').select('count').executeTakeFirstOrThrow()).count;
}

/** True where a record or setting was created, changed or deleted since the sweep began, or where that is not known. */
export async function changedSinceSweep(register: Register, sweepId: number): Promise<boolean> {
  const sweep = await register.db
    .selectFrom('sweeps')
    .select('change_count')
    .where('id', '=', sweepId)
    .executeTakeFirst();
  return sweep?.change_count !== (await changeCount(register.db));
}
