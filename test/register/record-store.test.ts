import { sql } from 'kysely';
import { describe, expect, test } from 'vitest';
import { openRegister } from '../../src/register/database.ts';
import { listRecords, readRecord, recordsWhereIn, upsertRecords } from '../../src/register/record-store.ts';
import { NOW, soundRegister, temporaryRegister } from './made-up-register.ts';

const OWNER = {
  ref: 'nell',
  name: 'Nell',
  kind: 'person',
  channel: 'mail',
  email: 'nell@example.org',
  postalAddress: null,
  language: 'en',
  enrolled: true,
} as const;

describe('records', () => {
  test('are read back as they were written, replaced by ref, and listed byte by byte', async () => {
    const { db } = await temporaryRegister();
    await upsertRecords(db, 'owners', [OWNER, { ...OWNER, ref: 'Zed' }, { ...OWNER, ref: 'a10' }], NOW);
    await upsertRecords(db, 'owners', [{ ...OWNER, name: 'Nell Fox', enrolled: false }], NOW);
    expect(await readRecord(db, 'owners', 'nell')).toEqual({ ...OWNER, name: 'Nell Fox', enrolled: false });
    expect(await readRecord(db, 'owners', 'nobody')).toBeNull();
    expect((await listRecords(db, 'owners')).map(({ ref }) => ref)).toEqual(['Zed', 'a10', 'nell']);
    expect(await recordsWhereIn(db, 'owners', 'ref', [])).toEqual([]);
  });

  test('that break their rules are refused and not written', async () => {
    const { db } = await temporaryRegister();
    await expect(upsertRecords(db, 'owners', [OWNER, { ...OWNER, ref: 'x', email: null }], NOW)).rejects.toThrow(
      'an owner reached by mail needs a mail address',
    );
    expect(await listRecords(db, 'owners')).toEqual([]);
  });

  test('that refer to what is not there are refused by the database', async () => {
    const register = await soundRegister();
    const fence = await readRecord(register.db, 'fences', 'F-1');
    if (!fence) throw new Error('F-1 is missing');
    await expect(upsertRecords(register.db, 'fences', [{ ...fence, siteRef: 'nowhere' }], NOW)).rejects.toThrow(
      'FOREIGN KEY constraint failed',
    );
    await expect(sql`delete from owners where ref = 'oda'`.execute(register.db)).rejects.toThrow('FOREIGN KEY');
    await expect(sql`update fences set height_m = 40`.execute(register.db)).rejects.toThrow('CHECK constraint failed');
  });

  test('more than one statement can hold are written all the same', async () => {
    const { db } = await temporaryRegister();
    const many = Array.from({ length: 5000 }, (_, index) => ({ ...OWNER, ref: `o-${index}` }));
    await upsertRecords(db, 'owners', many, NOW);
    expect(await listRecords(db, 'owners')).toHaveLength(5000);
  });

  test('a transaction holds the write lock from its beginning', async () => {
    const register = await soundRegister();
    const other = await openRegister(register.path);
    await sql`pragma busy_timeout = 0`.execute(other.db);
    await register.db.transaction().execute(async (transaction) => {
      await listRecords(transaction, 'owners');
      await expect(upsertRecords(other.db, 'owners', [OWNER], NOW)).rejects.toThrow('database is locked');
    });
    await upsertRecords(other.db, 'owners', [OWNER], NOW);
    await other.close();
  });
});
