import { describe, expect, it, onTestFinished } from 'vitest';
import { addAccount, hasAccounts, type NewAccount, setAccountDisabled } from '../../src/register/account-store.ts';
import { answeringApiToken, revokeApiToken } from '../../src/register/api-token-store.ts';
import { newApiToken } from '../../src/service/api-tokens.ts';
import { storeAccount } from '../web/accounts/signed-in.ts';
import { SAMPLE_NOW, sampleRegister } from '../web/sample-register.ts';

const NOW = '2026-11-26T08:00:00.000Z';
const CREW: NewAccount = {
  name: 'bo',
  displayName: 'Bo',
  role: 'crew',
  crewRef: null,
  language: 'es',
  passwordHash: `scrypt$15$8$3$${'A'.repeat(22)}$${'A'.repeat(43)}`,
  siteRefs: [],
};

async function register() {
  const { register: opened, remove } = await sampleRegister({ swept: false });
  onTestFinished(remove);
  return opened;
}

describe('accounts in the register', () => {
  it('begin with the office, and end with it', async () => {
    const opened = await register();
    const options = { now: NOW, onlyAsFirst: false };
    expect(await addAccount(opened, CREW, options)).toEqual({ refused: 'first must be office' });
    expect(await hasAccounts(opened.db)).toBe(false);
    const office = await storeAccount(opened, SAMPLE_NOW);
    const crew = await addAccount(opened, CREW, options);
    expect(crew).toMatchObject({ account: { name: 'bo', language: 'es' } });
    expect(await addAccount(opened, CREW, options)).toEqual({ refused: 'name taken' });
    expect(await setAccountDisabled(opened, office.id, NOW)).toBe('last office');
    const other = await storeAccount(opened, SAMPLE_NOW, { name: 'ann' });
    expect(await setAccountDisabled(opened, office.id, NOW)).toBeNull();
    expect(await setAccountDisabled(opened, other.id, NOW)).toBe('last office');
  });

  it('keep their name and role, and are never deleted', async () => {
    const opened = await register();
    await storeAccount(opened, SAMPLE_NOW);
    await expect(opened.db.updateTable('accounts').set({ role: 'crew' }).execute()).rejects.toThrow('make another');
    await expect(opened.db.deleteFrom('accounts').execute()).rejects.toThrow('never deleted');
  });

  it('name crews and sites that the register holds', async () => {
    const opened = await register();
    await storeAccount(opened, SAMPLE_NOW);
    const options = { now: NOW, onlyAsFirst: false };
    await expect(addAccount(opened, { ...CREW, crewRef: 'nobody' }, options)).rejects.toThrow(/FOREIGN KEY/);
    await expect(addAccount(opened, { ...CREW, role: 'board', siteRefs: ['NOWHERE'] }, options)).rejects.toThrow(
      /FOREIGN KEY/,
    );
    expect(await opened.db.selectFrom('accounts').select('name').execute()).toHaveLength(1);
  });

  it('have no password only in the demo', async () => {
    const opened = await register();
    await storeAccount(opened, SAMPLE_NOW);
    const spoilt = opened.db.updateTable('accounts').set({ password_hash: null }).execute();
    await expect(spoilt).rejects.toThrow(/CHECK/);
  });
});

describe('a token of a program', () => {
  it('is kept as a digest, answers in its time, and never again once revoked', async () => {
    const { db } = await register();
    const wanted = { name: 'monitor', scopes: ['read-metrics'], days: 2 } as const;
    const { token, text } = await newApiToken(db, wanted, SAMPLE_NOW);
    expect(text).toMatch(/^stormpale_[A-Za-z0-9_-]{43}$/);
    const [row] = await db.selectFrom('api_tokens').selectAll().execute();
    expect(JSON.stringify(row)).not.toContain(text.slice(10));
    const digest = row!.token_sha256;
    const at = (days: number): string => SAMPLE_NOW().plus({ days }).toUTC().toISO()!;
    expect(await answeringApiToken(db, digest, at(1))).toMatchObject({ scopes: ['read-metrics'] });
    expect(await answeringApiToken(db, digest, at(2))).toBeNull();
    expect(await revokeApiToken(db, token.id, at(1))).toMatchObject({ revokedAt: at(1) });
    expect(await revokeApiToken(db, token.id, at(1.5))).toMatchObject({ revokedAt: at(1) });
    expect(await answeringApiToken(db, digest, at(1))).toBeNull();
    await expect(db.updateTable('api_tokens').set({ scopes: 'read-fences' }).execute()).rejects.toThrow('make another');
    await expect(db.updateTable('api_tokens').set({ revoked_at: null }).execute()).rejects.toThrow(
      'never answers again',
    );
  });
});
