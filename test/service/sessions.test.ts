import { DateTime } from 'luxon';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { NewAccount } from '../../src/register/account-store.ts';
import { resumeSession, signOut, startSession } from '../../src/service/sessions.ts';
import { storeAccount } from '../web/accounts/signed-in.ts';
import { sampleRegister } from '../web/sample-register.ts';

const BEGIN = DateTime.fromISO('2026-11-26T08:00:00Z', { zone: 'utc' });

async function signedIn(some: Partial<NewAccount> = {}) {
  const { register, remove } = await sampleRegister({ swept: false });
  onTestFinished(remove);
  let now = BEGIN;
  const clock = () => now;
  if (some.role && some.role !== 'office') await storeAccount(register, clock, { name: 'first' });
  const account = await storeAccount(register, clock, some);
  const { token } = await startSession(register, account, null, clock);
  const resume = (isLocal = true) => resumeSession(register, token, { clock, isLocal });
  const later = (time: { readonly hours?: number; readonly days?: number }): void => {
    now = now.plus(time);
  };
  return { register, account, token, clock, resume, later };
}

describe('a session', () => {
  it('is stored as a digest of its secret only', async () => {
    const { register, token } = await signedIn();
    expect(token).toMatch(/^[A-Za-z0-9_-]{43}$/);
    const rows = await register.db.selectFrom('sessions').selectAll().execute();
    expect(rows).toHaveLength(1);
    expect(JSON.stringify(rows)).not.toContain(token);
  });

  it('of the office ends after twelve hours unused, and a week at the latest', async () => {
    const { resume, later } = await signedIn();
    for (let hours = 11; hours < 7 * 24; hours += 11) {
      later({ hours: 11 });
      expect(await resume(), `${hours} h`).not.toBeNull();
    }
    later({ hours: 4 });
    expect(await resume()).toBeNull();
    const unused = await signedIn();
    unused.later({ hours: 12 });
    expect(await unused.resume()).toBeNull();
    // an ended one does not come back when the clock does
    unused.later({ hours: -12 });
    expect(await unused.resume()).toBeNull();
  });

  it('of a crew lasts two weeks unused, and two months', async () => {
    const { resume, later } = await signedIn({ role: 'crew', name: 'crew' });
    for (let days = 13; days < 60; days += 13) {
      later({ days: 13 });
      expect(await resume(), `${days} d`).not.toBeNull();
    }
    later({ days: 9 });
    expect(await resume()).toBeNull();
  });

  it('knows the sites of a board, and no bound for others', async () => {
    const board = await signedIn({ role: 'board', name: 'board', siteRefs: ['SKERRY', 'PELICAN'] });
    expect((await board.resume())?.siteRefs).toEqual(['PELICAN', 'SKERRY']);
    expect((await (await signedIn()).resume())?.siteRefs).toBeNull();
  });

  it('ends on signing out, and for good; nonsense is none', async () => {
    const { register, token, clock, resume } = await signedIn();
    await signOut(register, token);
    expect(await resume()).toBeNull();
    for (const text of ['', 'x', 'x'.repeat(43), `${token}x`]) {
      expect(await resumeSession(register, text, { clock, isLocal: true }), text).toBeNull();
    }
  });

  it('clears away those whose last day is over when somebody signs in', async () => {
    const { register, account, clock, later } = await signedIn();
    later({ days: 8 });
    await startSession(register, account, null, clock);
    expect(await register.db.selectFrom('sessions').selectAll().execute()).toHaveLength(1);
  });

  it('of the demo is good on this machine only, and until somebody has an account', async () => {
    const { register, resume, clock } = await signedIn({ passwordHash: null, name: 'demo office' });
    expect(await resume()).not.toBeNull();
    expect(await resume(false)).toBeNull();
    await storeAccount(register, clock, { name: 'ann' });
    expect(await resume()).toBeNull();
  });
});
