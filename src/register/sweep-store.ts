import type { Selectable } from 'kysely';
import type { Register } from './database.ts';
import { changeCount } from './register-changes.ts';
import type { SweepClaim } from './sweep-claim.ts';
import { renewSweepClaim } from './sweep-claim.ts';
import type { SweepState, SweepsTable } from './sweep-tables.ts';

/** One sweep over the register. Times are ISO text in UTC. */
export interface Sweep {
  readonly id: number;
  /** The instant whose calendar day decides season 1 of every fence, also where the sweep is resumed later. */
  readonly asOf: string;
  readonly modelVersion: string;
  /** The forecast settings it runs with, as canonical JSON. */
  readonly settings: string;
  readonly state: SweepState;
  readonly startedAt: string;
  readonly finishedAt: string | null;
  /** Ref of the last fence that is done; null where none is. */
  readonly checkpointRef: string | null;
  readonly computed: number;
  readonly unchanged: number;
  readonly failed: number;
  readonly notices: number;
}

/** A fence that could not be forecast, and why. */
export interface SweepFailure {
  readonly ref: string;
  readonly message: string;
}

const sweepFromRow = (row: Selectable<SweepsTable>): Sweep => ({
  id: row.id,
  asOf: row.as_of,
  modelVersion: row.model_version,
  settings: row.settings,
  state: row.state,
  startedAt: row.started_at,
  finishedAt: row.finished_at,
  checkpointRef: row.checkpoint_ref,
  computed: row.computed,
  unchanged: row.unchanged,
  failed: row.failed,
  notices: row.notices,
});

/** The newest sweep in one of the states (any state where none is named), or null. */
export async function newestSweep(register: Register, state?: SweepState): Promise<Sweep | null> {
  let query = register.db.selectFrom('sweeps').selectAll().orderBy('id', 'desc').limit(1);
  if (state) query = query.where('state', '=', state);
  const row = await query.executeTakeFirst();
  return row ? sweepFromRow(row) : null;
}

/** True where a sweep was finished before this one and computed a fence: one over an empty register leaves nothing to compare with. */
export const finishedBefore = async ({ db }: Register, sweepId: number): Promise<boolean> =>
  (await db
    .selectFrom('sweeps')
    .select('id')
    .where('state', '=', 'finished')
    .where('computed', '>', 0)
    .where('id', '<', sweepId)
    .limit(1)
    .executeTakeFirst()) !== undefined;

/** The fences a sweep could not forecast, by ref. */
export async function listSweepFailures(register: Register, sweepId: number): Promise<readonly SweepFailure[]> {
  const rows = await register.db
    .selectFrom('sweep_failures')
    .select(['fence_ref', 'message'])
    .where('sweep_id', '=', sweepId)
    .orderBy('fence_ref')
    .execute();
  return rows.map((row) => ({ ref: row.fence_ref, message: row.message }));
}

/** Starts a new sweep; one that was left unfinished is marked superseded. */
export async function startSweep(
  register: Register,
  claim: SweepClaim,
  sweep: Pick<Sweep, 'asOf' | 'modelVersion' | 'settings' | 'startedAt'>,
): Promise<Sweep> {
  return register.db.transaction().execute(async (tx) => {
    await renewSweepClaim(tx, claim);
    await tx.updateTable('sweeps').set({ state: 'superseded' }).where('state', '=', 'running').execute();
    const row = await tx
      .insertInto('sweeps')
      .values({
        as_of: sweep.asOf,
        model_version: sweep.modelVersion,
        settings: sweep.settings,
        state: 'running',
        started_at: sweep.startedAt,
        finished_at: null,
        checkpoint_ref: null,
        change_count: await changeCount(tx),
      })
      .returningAll()
      .executeTakeFirstOrThrow();
    return sweepFromRow(row);
  });
}

/** Marks a sweep finished and returns it. */
export async function finishSweep(register: Register, claim: SweepClaim, id: number, at: string): Promise<Sweep> {
  return register.db.transaction().execute(async (tx) => {
    await renewSweepClaim(tx, claim);
    const row = await tx
      .updateTable('sweeps')
      .set({ state: 'finished', finished_at: at })
      .where('id', '=', id)
      .returningAll()
      .executeTakeFirstOrThrow();
    return sweepFromRow(row);
  });
}
