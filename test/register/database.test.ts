import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { expect, it, onTestFinished } from 'vitest';
import { openRegister } from '../../src/register/database.ts';

function temporaryPath(): string {
  const folder = mkdtempSync(join(tmpdir(), 'stormpale-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return join(folder, 'register.sqlite');
}

it('says where the register is and what to do where the file is none', async () => {
  const path = temporaryPath();
  writeFileSync(path, 'this is a text and no database, and it is long enough to be looked at'.repeat(20));
  await expect(openRegister(path)).rejects.toThrow(
    new RegExp(`cannot open the register at ${path} .*it is not a register .*move the file away`),
  );
});

it('says so where there is a folder, or a file where a folder should be', async () => {
  const path = temporaryPath();
  mkdirSync(path);
  await expect(openRegister(path)).rejects.toThrow(`cannot open the register at ${path}`);
  await expect(openRegister(path)).rejects.toThrow('it is a folder');
  const file = temporaryPath();
  writeFileSync(file, 'x');
  await expect(openRegister(join(file, 'register.sqlite'))).rejects.toThrow('a part of the path is a file');
});

it('tells the failure that ended a transaction, not that there was none left to roll back', async () => {
  const register = await openRegister(temporaryPath());
  onTestFinished(() => register.close());
  const failing = register.db.transaction().execute(async (tx) => {
    await sql`rollback`.execute(tx);
    throw new Error('database or disk is full');
  });
  await expect(failing).rejects.toThrow('database or disk is full');
});

it('waits for another writer while what is only read is answered, and takes no lock to read', async () => {
  const path = temporaryPath();
  const [one, other] = [await openRegister(path), await openRegister(path)];
  onTestFinished(() => one.close());
  onTestFinished(() => other.close());
  const order: string[] = [];
  let end: () => void = () => undefined;
  const ended = new Promise<void>((resolve) => {
    end = resolve;
  });
  const first = one.db.transaction().execute(async (tx) => {
    await sql`update register_changes set count = count + 1`.execute(tx);
    order.push('written first');
    await ended;
  });
  const readOnly = other.db
    .transaction()
    .setAccessMode('read only')
    .execute((tx) => sql`select count from register_changes`.execute(tx));
  expect((await readOnly).rows).toEqual([{ count: 0 }]);
  const second = sql`update register_changes set count = count + 10`.execute(other.db).then(() => order.push('second'));
  const third = other.db
    .transaction()
    .execute((tx) => sql`update register_changes set count = count + 100`.execute(tx))
    .then(() => order.push('third'));
  for (const _ of Array(3))
    expect((await sql`select count from register_changes`.execute(other.db)).rows).toHaveLength(1);
  order.push('read');
  end();
  await Promise.all([first, second, third]);
  expect(order.slice(0, 2)).toEqual(['written first', 'read']);
  expect((await sql`select count from register_changes`.execute(one.db)).rows).toEqual([{ count: 111 }]);
});
