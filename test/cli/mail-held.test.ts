import { describe, expect, it } from 'vitest';
import { fenceRegister, manyFences, temporaryFolder } from '../service/fence-register.ts';
import { command } from './command-line.ts';

/** Two old fences of two owners, swept for the first time with what it found held. */
async function heldSample() {
  const folder = temporaryFolder();
  const old = { installedEarliest: '2005-04-15', installedLatest: '2005-04-15' };
  const fences = manyFences(2, old).map((fence, index) => ({ ...fence, ownerRef: index === 0 ? 'ANN' : 'BEA' }));
  const owners = [{}, { ref: 'BEA', name: 'Bea Wren', email: 'bea@example.net' }];
  await fenceRegister({ owners, fences, holdFirstSweep: 'yes' }, folder);
  return { folder, swept: await command(folder, ['sweep']) };
}

interface Held {
  readonly held: readonly { readonly id: number; readonly matter: string; readonly ownerRef: string }[];
}
const heldOf = async (folder: string): Promise<Held['held']> =>
  (JSON.parse((await command(folder, ['mail', 'held', '--json'])).out) as Held).held;

describe('mail held, release, hold and office', { timeout: 120_000 }, () => {
  it('shows what a first sweep holds, and releases by number, owner, matter and all', async () => {
    const { folder, swept } = await heldSample();
    expect(swept.out).toContain('0 mails and 0 letters written');
    expect(swept.out).toContain('2 notices held until you release them: see "stormpale mail held".');
    const held = await heldOf(folder);
    expect(held.length).toBeGreaterThan(1);
    const list = await command(folder, ['mail', 'held']);
    expect(list.out).toContain('first sweep');
    expect(list.out).toMatch(/\d+ notices? to \d+ owners?\. To send them: stormpale mail release/);
    const [first] = held;
    const sentence = ['--sentence', 'As we said on the phone.'];
    const one = await command(folder, ['mail', 'release', String(first?.id), ...sentence, '--json']);
    expect(JSON.parse(one.out)).toMatchObject({ notices: 1, owners: 1 });
    expect((await heldOf(folder)).map(({ id }) => id)).not.toContain(first?.id);
    const queue = JSON.parse((await command(folder, ['mail', 'queue', '--json'])).out) as readonly {
      readonly id: number;
    }[];
    expect((await command(folder, ['mail', 'show', String(queue[0]?.id)])).out).toContain('As we said on the phone.');
    expect((await command(folder, ['mail', 'release', '--all'])).out).toMatch(/^Released \d+ notice/);
    expect((await command(folder, ['mail', 'held'])).out).toContain('Nothing is held.');
    expect(await command(folder, ['mail', 'release', '--all'])).toMatchObject({ code: 4 });
  });

  it('refuses a release that names nothing, or all and some, or a sentence too long', async () => {
    const { folder } = await heldSample();
    expect((await command(folder, ['mail', 'release'])).err).toContain('nothing says what to release');
    expect((await command(folder, ['mail', 'release', '--all', '1'])).err).toContain('--all goes with no number');
    expect((await command(folder, ['mail', 'release', 'first'])).err).toContain('is no number of a notice');
    expect((await command(folder, ['mail', 'release', '--matter', 'weather'])).err).toContain('matters are dangerous,');
    const long = await command(folder, ['mail', 'release', '--all', '--sentence', 'x'.repeat(601)]);
    expect(long.err).toContain('the sentence has 601 characters');
    expect((await heldOf(folder)).length).toBeGreaterThan(0);
  });

  it('holds a matter and lets it go, but never danger', async () => {
    const { folder } = await heldSample();
    expect((await command(folder, ['mail', 'hold'])).out).toBe('No matter is held.\n');
    expect((await command(folder, ['mail', 'hold', '--matter', 'two thirds', 'on'])).out).toContain('two thirds');
    expect((await command(folder, ['mail', 'hold', '--matter', 'two thirds', 'off'])).out).toContain(
      'No matter is held.',
    );
    expect((await command(folder, ['mail', 'hold', '--matter', 'dangerous', 'on'])).code).toBe(3);
    expect((await command(folder, ['mail', 'hold', '--matter', 'short', 'maybe'])).code).toBe(2);
  });

  it('lists what waits for the office itself', async () => {
    const { folder } = await heldSample();
    expect((await command(folder, ['mail', 'office'])).code).toBe(0);
    expect((await command(folder, ['mail', 'office', '--settle', '99'])).code).toBe(4);
  });
});
