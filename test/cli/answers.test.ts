import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { askForCall } from '../../src/service/owner-answers.ts';
import { newOwnerLink } from '../../src/service/owner-links.ts';
import { acceptQuote, quotesOfOwner } from '../../src/service/owner-quotes.ts';
import { SAMPLE_NOW, sampleRegister } from '../web/sample-register.ts';
import { command } from './command-line.ts';

let sample: Awaited<ReturnType<typeof sampleRegister>>;
beforeAll(async () => {
  sample = await sampleRegister({ swept: false });
});
afterAll(() => sample.remove());
const run = (...args: readonly string[]) => command(sample.folder, args);

describe('stormpale answers', () => {
  it('has none at first', async () => {
    expect(await run('answers')).toMatchObject({ code: 0, out: 'No owner has answered yet.\n' });
    expect((await run('answers', '--open')).out).toBe('Nobody waits for a call.\n');
  });

  it('lists a quote that was offered and accepted, and a call until it was made', async () => {
    const offered = await run('quote', 'PR-04', 'post-swap:2,5', '--offer', '--out', '-');
    expect(offered.code).toBe(0);
    const number = /Quote (Q-\d{8}-[0-9A-F]{8})/.exec(offered.out)?.[1] ?? '';
    expect(offered.err).toContain(`the owners of PR-04 can accept ${number}`);
    const made = await run('owner-link', 'new', 'QUINN', '--may', 'accept', 'call', '--json');
    const link = JSON.parse(made.out) as { readonly id: number; readonly scopes: readonly string[] };
    expect(link.scopes).toEqual(['accept', 'call']);
    const answering = { id: link.id, ownerRef: 'QUINN' };
    const [quote] = await quotesOfOwner(sample.register, 'QUINN', SAMPLE_NOW);
    const shown = { number, sha256: quote!.sha256, name: 'Rosa Quinn' };
    expect(await acceptQuote(sample.register, answering, shown, SAMPLE_NOW)).toBe('accepted');
    await askForCall(sample.register, answering, { phone: '555-0123', when: '', about: '' }, SAMPLE_NOW);
    const listed = await run('answers');
    expect(listed.out).toContain(`Rosa Quinn (QUINN) accepted quote ${number} of 520.00 USD, signed "Rosa Quinn"`);
    expect(listed.out).toContain('wants a call; number 555-0123. WAITS');
    expect((await run('answers', '--called', '2', '--by', 'Nell')).out).toBe('Call 2 is noted as made.\n');
    expect((await run('answers', '--called', '2')).code).toBe(4);
    expect((await run('answers', '--open')).out).toBe('Nobody waits for a call.\n');
    const json = JSON.parse((await run('answers', '--json')).out) as { readonly answers: readonly object[] };
    expect(json.answers).toMatchObject([
      { kind: 'call wanted', settledBy: 'Nell', detail: { phone: '555-0123' } },
      { kind: 'quote accepted', subject: number, linkId: link.id, detail: { name: 'Rosa Quinn', total: 52000 } },
    ]);
  });

  it('takes a quote back, so that nobody accepts it', async () => {
    const offered = await run('quote', 'PR-01', 'inspect', '--offer', '--json');
    const { number } = JSON.parse(offered.out) as { readonly number: string };
    expect((await run('quote-withdraw', number)).out).toContain('cannot be accepted any more');
    expect((await run('quote-withdraw', number)).code).toBe(4);
    const options = { publicUrl: 'http://127.0.0.1', now: SAMPLE_NOW };
    const { link } = await newOwnerLink(sample.register.db, { ownerRef: 'HOA', scopes: ['accept'], days: 1 }, options);
    const [quote] = await quotesOfOwner(sample.register, 'HOA', SAMPLE_NOW);
    const shown = { number, sha256: quote!.sha256, name: 'Lou' };
    expect(await acceptQuote(sample.register, link, shown, SAMPLE_NOW)).toBe('withdrawn');
    const later = () => SAMPLE_NOW().plus({ days: 40 });
    expect((await quotesOfOwner(sample.register, 'QUINN', later)).map(({ standing }) => standing)).toEqual([
      'accepted',
    ]);
  });
});
