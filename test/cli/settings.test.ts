import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { command } from './command-line.ts';

describe('settings', () => {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'stormpale-settings-'));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  it('sets some and shows all', async () => {
    const changes = ['look-ahead-seasons=3', 'time-zone=America/Chicago', 'company-name=Gale & Rail = Fences'];
    const { code, out } = await command(folder, ['settings', ...changes]);
    expect(code).toBe(0);
    expect(out).toMatch(/^look-ahead-seasons +3 /m);
    expect(out).toContain('The next sweep judges every fence by this');
    const shown = await command(folder, ['settings', '--json']);
    expect(JSON.parse(shown.out)).toEqual({
      'standing-return-period-years': 300,
      'look-ahead-seasons': 3,
      'large-import-fences': 25,
      currency: 'USD',
      'reminder-days': 60,
      'hold-first-sweep': 'yes',
      'time-zone': 'America/Chicago',
      'company-name': 'Gale & Rail = Fences',
      'company-postal-address': '',
      'company-phone': '',
      'sender-address': 'fences@example.org',
    });
  });

  it('refuses with the reason and sets nothing', async () => {
    await command(folder, ['settings', 'company-phone=555-0100']);
    const refused = await command(folder, [
      'settings',
      'company-phone=555-0199',
      'look-ahead-seasons=many',
      'look-ahead-seasons=99',
      'time-zone=America/Atlantis',
      'sender-address=office',
      'company-nam=x',
      'company-name',
    ]);
    expect(refused.code).toBe(3);
    for (const reason of [
      'look-ahead-seasons = "many": not a number',
      'look-ahead-seasons = "99": outside the allowed 0 to 30',
      'time-zone = "America/Atlantis"',
      'sender-address = "office": not a mail address',
      'did you mean company-name?',
      'company-name has no value',
      'nothing was set',
    ]) {
      expect(refused.err).toContain(reason);
    }
    expect((await command(folder, ['settings'])).out).toContain('555-0100');
  });

  it('does not take a mistyped folder for a register in which nothing was set', async () => {
    expect((await command(join(folder, 'nowhere'), ['settings'])).code).toBe(4);
  });
});
