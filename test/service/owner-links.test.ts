import { sql } from 'kysely';
import { describe, expect, it, onTestFinished } from 'vitest';
import { newOwnerLink, ownerLinkShown } from '../../src/service/owner-links.ts';
import { SAMPLE_NOW, sampleRegister } from '../web/sample-register.ts';

async function register() {
  const { register: opened, remove } = await sampleRegister({ swept: false });
  onTestFinished(remove);
  return opened.db;
}
const OPTIONS = { publicUrl: 'https://fences.example.org/', now: SAMPLE_NOW };
const QUINN = { ownerRef: 'QUINN', scopes: ['see'], days: 30 } as const;

describe("an owner's link", () => {
  it('names its register’s address and owner, and is known again', async () => {
    const db = await register();
    const { url, token, link } = await newOwnerLink(db, QUINN, OPTIONS);
    expect(url).toBe(`https://fences.example.org/owner/${token}`);
    expect(await ownerLinkShown(db, token, SAMPLE_NOW)).toEqual(link);
    expect(link).toMatchObject({ ownerRef: 'QUINN', expiresAt: '2026-12-24T12:00:00.000Z' });
    const later = await newOwnerLink(db, QUINN, OPTIONS);
    expect(await ownerLinkShown(db, token, SAMPLE_NOW)).toEqual(link);
    expect(later.token).not.toBe(token);
  });

  it('of another register is none, though number and owner are the same', async () => {
    const [db, other] = [await register(), await register()];
    const [here, there] = [await newOwnerLink(db, QUINN, OPTIONS), await newOwnerLink(other, QUINN, OPTIONS)];
    expect(here.link).toEqual(there.link);
    expect(await ownerLinkShown(db, there.token, SAMPLE_NOW)).toBeNull();
  });

  it('is none once what it says was changed behind it', async () => {
    const db = await register();
    const { token } = await newOwnerLink(db, QUINN, OPTIONS);
    const change = db.updateTable('owner_links').set({ owner_ref: 'MASON' });
    await expect(change.execute()).rejects.toThrow('make another');
    await sql`drop trigger owner_links_kept`.execute(db);
    await change.execute();
    expect(await ownerLinkShown(db, token, SAMPLE_NOW)).toBeNull();
  });

  it('is not looked for behind what cannot be one', async () => {
    const db = await register();
    await newOwnerLink(db, QUINN, OPTIONS);
    const signature = 'A'.repeat(43);
    for (const text of [
      '',
      '1',
      `1.${signature}x`,
      `01.${signature}`,
      `-1.${signature}`,
      `1.${signature} `,
      `%31.${signature}`,
    ]) {
      expect(await ownerLinkShown(db, text, SAMPLE_NOW), text).toBeNull();
    }
  });
});
