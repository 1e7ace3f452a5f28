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
