import type { Register } from './database.ts';

/** The register's secret for return addresses and exported histories; the first one offered is kept for good. */
export async function mailSecret(register: Register, offered: string): Promise<string> {
  const stored = (): Promise<{ secret: string } | undefined> =>
    register.db.selectFrom('mail_secret').select('secret').executeTakeFirst();
  const before = await stored();
  if (before) return before.secret;
  await register.db
    .insertInto('mail_secret')
    .values({ id: 1, secret: offered })
    .onConflict((conflict) => conflict.column('id').doNothing())
    .execute();
  return (await stored())?.secret ?? offered;
}
