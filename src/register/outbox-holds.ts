import type { Register } from './database.ts';
import type { WaitsFor } from './sweep-tables.ts';

/** Has leased messages wait, without counting a try: each until its own moment, and why. */
export async function holdLeased(
  register: Register,
  token: string,
  holds: readonly { readonly id: number; readonly dueAt: string; readonly waitsFor: WaitsFor }[],
): Promise<void> {
  if (holds.length === 0) return;
  await register.db.transaction().execute(async (tx) => {
    for (const { id, dueAt, waitsFor } of holds) {
      await tx
        .updateTable('outbox')
        .set({ state: 'queued', lease_token: null, lease_until: null, due_at: dueAt, waits_for: waitsFor })
        .where('id', '=', id)
        .where('lease_token', '=', token)
        .execute();
    }
  });
}

/** Makes due at once whatever waits for an hour or its turn: the rules may have changed since, and are asked anew. */
export async function reconsiderHolds(register: Register, at: string): Promise<void> {
  await register.db
    .updateTable('outbox')
    .set({ due_at: at })
    .where('state', '=', 'queued')
    .where('waits_for', 'is not', null)
    .where('due_at', '>', at)
    .execute();
}

/** What a domain was sent since a moment, and how much waits for its turn there. Times are ISO text in UTC. */
export async function domainTraffic(
  register: Register,
  domain: string,
  window: { readonly since: string; readonly now: string },
): Promise<{ readonly tries: number; readonly oldestAt: string | null; readonly waiting: number }> {
  const { since, now } = window;
  const { tries, oldestAt } = await register.db
    .selectFrom('mail_tries')
    .select((eb) => [eb.fn.countAll<number>().as('tries'), eb.fn.min('at').as('oldestAt')])
    .where('domain', '=', domain)
    .where('at', '>', since)
    .where('at', '<=', now)
    .where('outcome', '<>', 'lost')
    .executeTakeFirstOrThrow();
  const { waiting } = await register.db
    .selectFrom('outbox')
    .select((eb) => eb.fn.countAll<number>().as('waiting'))
    .where('waits_for', '=', 'sending rate')
    .where('domain', '=', domain)
    .where('state', '=', 'queued')
    .where('due_at', '>', now)
    .executeTakeFirstOrThrow();
  return { tries, oldestAt, waiting };
}
