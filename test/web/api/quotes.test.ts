import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { newOwnerLink } from '../../../src/service/owner-links.ts';
import { changePreferences } from '../../../src/service/owner-preferences.ts';
import { acceptQuote, quotesOfOwner } from '../../../src/service/owner-quotes.ts';
import { answeringSample } from '../owner/answering-sample.ts';
import { SAMPLE_NOW } from '../sample-register.ts';
import { type ApiClient, apiClient } from './api-client.ts';

describe('owners, their quotes and answers by the API', { timeout: 60_000 }, () => {
  let sample: Awaited<ReturnType<typeof answeringSample>>;
  let program: ApiClient;
  beforeAll(async () => {
    sample = await answeringSample();
    program = await apiClient(sample, ['read-register', 'release-notices']);
  });
  afterAll(() => sample.close());

  const link = async (ownerRef: string) => {
    const options = { publicUrl: sample.config.publicUrl, now: SAMPLE_NOW };
    return (await newOwnerLink(sample.register.db, { ownerRef, scopes: ['see'], days: 30 }, options)).link;
  };

  it('lists what was offered page after page, and how it stands', async () => {
    const first = await program.json('GET', '/api/v1/quotes?limit=1');
    const rest = await program.json('GET', `/api/v1/quotes?limit=1&cursor=${String(first.next)}`);
    const numbers = [first, rest].flatMap(({ rows }) => (rows as { number: string }[]).map(({ number }) => number));
    expect(numbers.toSorted()).toEqual(Object.values(sample.quotes).toSorted());
    expect(await program.json('GET', '/api/v1/quotes?fence=PR-04')).toMatchObject({
      rows: [{ number: sample.quotes['PR-04'], standing: 'open', accepted: null, quote: { taxPercent: 7.5 } }],
    });
    await program.json('GET', '/api/v1/quotes?cursor=abc', undefined, 400);
  });

  it('offers a quote once, to the owners of its fence, who can then accept it', async () => {
    const wish = { fence: 'PR-03', works: [{ kind: 'post-swap', posts: [2] }], validDays: 20 };
    const offered = await program.json('POST', '/api/v1/quotes', wish);
    expect(offered).toMatchObject({ fenceRef: 'PR-03', standing: 'open', validUntil: '2026-12-14' });
    expect(await program.json('POST', '/api/v1/quotes', wish)).toEqual(offered);
    const theirs = await quotesOfOwner(sample.register, 'HOA', SAMPLE_NOW);
    expect(theirs.map(({ number }) => number)).toContain(offered.number);
    const shown = { number: String(offered.number), sha256: String(offered.sha256), name: 'R. Lake' };
    expect(await acceptQuote(sample.register, await link('HOA'), shown, SAMPLE_NOW)).toBe('accepted');
    const now = await program.json('GET', `/api/v1/quotes/${String(offered.number)}`);
    expect(now).toMatchObject({ standing: 'accepted', accepted: { ownerRef: 'HOA' } });
    const answers = await program.json('GET', '/api/v1/answers?owner=HOA&kind=quote+accepted');
    expect(answers.rows).toMatchObject([{ subject: offered.number, detail: { name: 'R. Lake' } }]);
    expect((await program.json('GET', '/api/v1/answers?owner=QUINN')).rows).toEqual([]);
  });

  it('takes an offer back, once', async () => {
    const path = `/api/v1/quotes/${sample.quotes['PR-04']}`;
    expect(await program.json('POST', `${path}/withdraw`)).toMatchObject({ standing: 'withdrawn' });
    expect(await program.json('GET', path)).toMatchObject({ standing: 'withdrawn' });
    await program.json('POST', `${path}/withdraw`, undefined, 409);
    await program.json('POST', '/api/v1/quotes/Q-none/withdraw', undefined, 404);
  });

  it('offers nothing that cannot be done, and nothing by a token that may not', async () => {
    const works = [{ kind: 'post-swap', posts: [99] }];
    await program.json('POST', '/api/v1/quotes', { fence: 'PR-03', works }, 409);
    await program.json('POST', '/api/v1/quotes', { fence: 'NOPE', works }, 404);
    await program.json('POST', '/api/v1/quotes', { fence: 'PR-03', works: [] }, 422);
    const reader = await apiClient(sample, ['read-register', 'read-fences', 'change-visits'], 'reader');
    await reader.json('POST', '/api/v1/quotes', { fence: 'PR-03', works: [{ kind: 'post-swap' }] }, 403);
    expect(await quotesOfOwner(sample.register, 'HOA', SAMPLE_NOW)).toHaveLength(2);
  });

  it('says what an owner wants to be written about', async () => {
    const told = { groups: expect.arrayContaining([{ group: 'marks', told: true }]) as unknown };
    expect(await program.json('GET', '/api/v1/owners/HOA/preferences')).toMatchObject({ ...told, hasChosen: false });
    const change = { muted: ['marks'], pausedUntil: '2027-01-31', language: 'es' as const };
    await changePreferences(sample.register, await link('HOA'), { change, kind: 'preferences' }, SAMPLE_NOW);
    expect(await program.json('GET', '/api/v1/owners/HOA/preferences')).toMatchObject({
      ownerRef: 'HOA',
      language: 'es',
      pausedUntil: '2027-01-31',
      hasChosen: true,
      groups: expect.arrayContaining([{ group: 'marks', told: false }]) as unknown,
    });
    await program.json('GET', '/api/v1/owners/NOBODY/preferences', undefined, 404);
  });
});
