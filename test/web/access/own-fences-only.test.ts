import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { revokeOwnerLink } from '../../../src/register/owner-link-store.ts';
import { listRecords } from '../../../src/register/record-store.ts';
import { isoUtc } from '../../../src/service/clock.ts';
import { newOwnerLink } from '../../../src/service/owner-links.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';
import { SAMPLE_NOW } from '../sample-register.ts';

/** Fences and owners of the sample, as its records have them. */
let owned: readonly { readonly ref: string; readonly siteRef: string; readonly owners: readonly string[] }[];
let owners: readonly string[];
let sample: SampleApp;
beforeAll(async () => {
  sample = await sampleApp();
  const { db } = sample.register;
  owners = (await listRecords(db, 'owners')).map(({ ref }) => ref);
  owned = (await listRecords(db, 'fences')).map(({ ref, siteRef, ownerRef, secondOwnerRef }) => ({
    ref,
    siteRef,
    owners: secondOwnerRef === null ? [ownerRef] : [ownerRef, secondOwnerRef],
  }));
});
afterAll(() => sample.close());

const linkOf = async (ownerRef: string, days = 1): Promise<string> => {
  const wanted = { ownerRef, scopes: ['see'], days } as const;
  const options = { publicUrl: 'http://127.0.0.1:8480', now: SAMPLE_NOW };
  return new URL((await newOwnerLink(sample.register.db, wanted, options)).url).pathname;
};
const get = (path: string, cookie?: string) => sample.pages.request(path, { headers: cookie ? { cookie } : {} });

describe("an owner's link", () => {
  it('shows every fence of its owner and none of another, whichever two are tried', async () => {
    expect(owners.length).toBeGreaterThanOrEqual(3);
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...owners), fc.constantFrom(...owned), async (owner, fence) => {
        const path = await linkOf(owner);
        const response = await get(`${path}/fences/${fence.ref}`);
        const isTheirs = fence.owners.includes(owner);
        expect(response.status).toBe(isTheirs ? 200 : 404);
        const text = await response.text();
        expect(text.includes(fence.ref)).toBe(isTheirs);
        const list = await (await get(path)).text();
        expect(list.includes(`/fences/${fence.ref}"`)).toBe(isTheirs);
      }),
      { numRuns: 60, seed: 20261126 },
    );
  });

  it('answers for somebody else’s fence as for one that is not there', async () => {
    const path = await linkOf('MASON');
    const texts = await Promise.all(['PR-01', 'NOPE'].map(async (ref) => (await get(`${path}/fences/${ref}`)).text()));
    expect(texts[0]).toBe(texts[1]);
  });

  it('is nothing once one sign of it is another, or once it says another owner', async () => {
    const path = await linkOf('QUINN');
    const other = await linkOf('MASON');
    const token = path.slice('/owner/'.length);
    await fc.assert(
      fc.asyncProperty(fc.nat(token.length - 1), fc.constantFrom('A', 'b', '7', '_'), async (at, sign) => {
        const changed = `${token.slice(0, at)}${sign}${token.slice(at + 1)}`;
        if (changed === token) return;
        expect((await get(`/owner/${changed}`)).status).toBe(404);
      }),
      { numRuns: 60, seed: 20261126 },
    );
    const [number] = other.slice('/owner/'.length).split('.');
    expect((await get(`/owner/${number}.${token.split('.')[1]}`)).status).toBe(404);
    expect((await get(path)).status).toBe(200);
  });

  it('opens nothing when it is over or revoked, and says so in both languages', async () => {
    const path = await linkOf('QUINN');
    const id = Number.parseInt(path.slice('/owner/'.length).split('.')[0] ?? '', 36);
    await revokeOwnerLink(sample.register.db, id, isoUtc(SAMPLE_NOW()));
    const gone = await get(path);
    expect(gone.status).toBe(404);
    expect(await gone.text()).toMatch(/Ask the fence office for a new one\. · Pida uno nuevo/);
    const early = { publicUrl: 'http://127.0.0.1', now: () => SAMPLE_NOW().minus({ days: 3 }) };
    const old = await newOwnerLink(sample.register.db, { ownerRef: 'QUINN', scopes: ['see'], days: 2 }, early);
    expect((await get(`/owner/${old.token}`)).status).toBe(404);
  });

  it('speaks its owner’s language, with the cautions', async () => {
    const spanish = await (await get(`${await linkOf('QUINN')}/fences/PR-04`)).text();
    expect(spanish).toContain('<html lang="es">');
    expect(spanish).toContain('Se rompe con una ráfaga de unas');
    expect(spanish).toContain('no una certificación estructural');
    const english = await (await get(await linkOf('MASON'))).text();
    expect(english).toContain('<html lang="en">');
    expect(english).toContain('not a structural certification');
    expect(english).not.toContain('Sign out');
  });
});

describe('a board', () => {
  it('sees every fence of its sites and none of another, in the list, its counts, its pages and its JSON', async () => {
    for (const siteRefs of [['PELICAN'], ['SKERRY'], ['PELICAN', 'SKERRY'], []]) {
      const cookie = await sample.signIn({ name: `board-${siteRefs.join('-') || 'none'}`, role: 'board', siteRefs });
      const list = await (await get('/fences', cookie)).text();
      const theirs = owned.filter((fence) => siteRefs.includes(fence.siteRef));
      for (const { ref, siteRef } of owned) {
        const isTheirs = siteRefs.includes(siteRef);
        expect(list.includes(`href="/fences/${ref}"`), ref).toBe(isTheirs);
        for (const path of [`/fences/${ref}`, `/fences/${ref}.json`, `/fences/${ref}/reasons`]) {
          expect((await get(path, cookie)).status, path).toBe(isTheirs ? 200 : 404);
        }
      }
      for (const site of ['PELICAN', 'SKERRY']) {
        expect(list.includes(`<option value="${site}"`), site).toBe(siteRefs.includes(site));
        const narrowed = await (await get(`/fences?site=${site}`, cookie)).text();
        expect(/href="\/fences\//.test(narrowed), site).toBe(siteRefs.includes(site));
      }
      if (theirs.length > 0) expect(list).toContain(`of ${theirs.length} fences`);
      else expect(list).toContain('The register holds no fences yet.');
    }
  });

  it('is not told of fences elsewhere that could not be forecast', async () => {
    const { db } = sample.register;
    const [sweep] = await db.selectFrom('sweeps').select('id').where('state', '=', 'finished').execute();
    const failure = { sweep_id: sweep!.id, message: 'made up for this test' };
    await db
      .insertInto('sweep_failures')
      .values([
        { ...failure, fence_ref: 'PR-05' },
        { ...failure, fence_ref: 'SK-01' },
      ])
      .execute();
    const cookie = await sample.signIn({ name: 'board-told', role: 'board', siteRefs: ['SKERRY'] });
    const list = await (await get('/fences', cookie)).text();
    expect(list).toContain('SK-01 (made up for this test)');
    expect(list).not.toContain('PR-05');
    expect(await (await sample.app.request('/fences')).text()).toContain('PR-05 (made up for this test)');
  });
});
