import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { ImportReport } from '../../src/register/csv/import-report.ts';
import { RECORD_KINDS } from '../../src/register/record-store.ts';
import { SOUND_FILES } from '../register/made-up-register.ts';
import { sampleRegister } from '../web/sample-register.ts';
import { command } from './command-line.ts';

describe('import, export, sweep and mail', () => {
  let folder: string;
  let data: string;
  let paths: string[];
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'stormpale-cli-'));
    data = join(folder, 'data');
    paths = SOUND_FILES.map(({ name, text }) => {
      const path = join(folder, name);
      writeFileSync(path, text);
      return path;
    });
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  const spoil = (name: string, from: string, to: string): void => {
    const path = join(folder, name);
    const text = readFileSync(path, 'utf8');
    if (!text.includes(from)) throw new Error(`${name} does not hold ${from}`);
    writeFileSync(path, text.replace(from, to));
  };

  it('imports sound files and says how many records came of them', async () => {
    const { code, out, err } = await command(data, ['import', ...paths]);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('fences: 2 created, 0 changed, 0 unchanged\n');
    const again = await command(data, ['import', ...paths]);
    expect(again.out).toContain('fences: 0 created, 0 changed, 2 unchanged\n');
  });

  it('keeps no good row where the refused ones could not be handed back', async () => {
    spoil('fences.csv', '2014-05-03', '2014-13-03');
    const nowhere = join(folder, 'no-such-folder', 'bad.csv');
    const { code, err } = await command(data, ['import', '--accept-valid', '--rejected', nowhere, ...paths]);
    expect(code).toBe(3);
    expect(err).toContain('nothing was imported');
    expect((await command(data, ['export', 'owners'])).out.trimEnd().split('\n')).toHaveLength(1);
  });

  it('says that forecasts follow with the next sweep', async () => {
    expect((await command(data, ['import', ...paths])).out).toContain('to have them now: stormpale sweep');
    expect((await command(data, ['import', ...paths])).out).not.toContain('stormpale sweep');
  });

  it('changes nothing in a dry run', async () => {
    const dry = await command(data, ['import', '--dry-run', ...paths]);
    expect(dry.code).toBe(0);
    expect(dry.out).toContain('fences: would be 2 created');
    expect(dry.out).toContain('Nothing was changed: this was a dry run.');
    expect((await command(data, ['export', 'fences'])).out.trimEnd().split('\n')).toHaveLength(1);
  });

  it('ends with 3, names line, field, value and reason, and changes nothing where a row is bad', async () => {
    spoil('fences.csv', '2014-05-03', '2014-13-03');
    const { code, err } = await command(data, ['import', ...paths]);
    expect(code).toBe(3);
    expect(err).toMatch(/fences\.csv line 2, installed "2014-13-03": .+/);
    expect(err).toContain('--accept-valid');
    expect((await command(data, ['export', 'owners'])).out.trimEnd().split('\n')).toHaveLength(1);
  });

  it('ends with 5, keeps the good rows and hands the bad ones back where told to', async () => {
    spoil('fences.csv', '2014-05-03', '2014-13-03');
    const bad = join(folder, 'bad.csv');
    const fences = paths.filter((path) => !/posts|works/.test(path));
    const { code, out } = await command(data, ['import', '--accept-valid', '--rejected', bad, ...fences]);
    expect(code).toBe(5);
    expect(out).toContain('1 refused');
    expect(out).toContain(bad);
    const handedBack = readFileSync(bad, 'utf8');
    expect(handedBack.split('\n')[0]).toMatch(/,reasons$/);
    expect(handedBack).toContain('2014-13-03');
    expect((await command(data, ['export', 'fences'])).out).toContain('F-2,quill');
  });

  it('puts refused rows beside their file where no other place is named', async () => {
    spoil('owners.csv', 'oda@example.org', 'oda at example');
    const { code } = await command(data, ['import', '--accept-valid', join(folder, 'owners.csv')]);
    expect(code).toBe(5);
    expect(existsSync(join(folder, 'owners.rejected.csv'))).toBe(true);
  });

  it('gives the whole report as JSON', async () => {
    spoil('fences.csv', '2014-05-03', '2014-13-03');
    const { code, out } = await command(data, ['import', '--json', ...paths]);
    expect(code).toBe(3);
    const report = JSON.parse(out) as ImportReport;
    expect(report.applied).toBe(false);
    expect(report.faults).toContainEqual(expect.objectContaining({ file: 'fences.csv', line: 2, column: 'installed' }));
  });

  it('refuses a file it cannot read and options that contradict each other', async () => {
    const missing = await command(data, ['import', join(folder, 'none.csv')]);
    expect(missing.code).toBe(3);
    expect(missing.err).toMatch(/none\.csv cannot be read .*; nothing was imported\n.+\n$/);
    writeFileSync(join(folder, 'latin.csv'), Buffer.from([0x72, 0x65, 0x66, 0x0a, 0xe9, 0x0a]));
    const latin = await command(data, ['import', join(folder, 'latin.csv')]);
    expect(latin.code).toBe(3);
    expect(latin.err).toContain('is not UTF-8 text');
    expect((await command(data, ['import', '--rejected', 'x.csv', ...paths])).code).toBe(2);
  });

  it('counts on standard error only where that is a terminal', async () => {
    const { err } = await command(data, ['import', ...paths], { errIsTerminal: true });
    expect(err).toMatch(/Importing: \d+ of \d+ rows/);
    const sweep = await command(data, ['sweep'], { errIsTerminal: true });
    expect(sweep.err).toContain('Sweeping: 2 fences');
    expect((await command(data, ['sweep'])).err).toBe('');
  });

  it('exports what it imported so that an import of it changes nothing', async () => {
    await command(data, ['import', ...paths]);
    const out = join(folder, 'out');
    const exported = await command(data, ['export', 'all', '--out', out]);
    expect(exported.code).toBe(0);
    expect(readdirSync(out)).toHaveLength(RECORD_KINDS.length);
    const { code, out: told } = await command(data, ['import', ...readdirSync(out).map((name) => join(out, name))]);
    expect(code).toBe(0);
    expect(told).not.toMatch(/[1-9]\d* (created|changed)/);
    expect((await command(data, ['export', 'fences', '--out', '-'])).out).toBe(
      readFileSync(join(out, 'fences.csv'), 'utf8'),
    );
  });

  it('ends with 2 where an export cannot be meant', async () => {
    expect((await command(data, ['export', 'all'])).err).toContain('name a folder with --out');
    expect((await command(data, ['export', 'fence'])).code).toBe(2);
    expect((await command(data, ['export', 'fences', '--units', 'furlongs'])).code).toBe(2);
  });

  it('sweeps, and the second time finds nothing to do', async () => {
    await command(data, ['import', ...paths]);
    const first = await command(data, ['sweep', '--json']);
    expect(first.code).toBe(0);
    expect(JSON.parse(first.out)).toMatchObject({ kind: 'finished', sweep: { computed: 2, failed: 0 } });
    expect((await command(data, ['sweep'])).out).toMatch(/^0 forecast, 2 unchanged, 0 failed; 0 notices, 0 mails/);
  });

  it('lists waiting mail, shows one, and queues it again', async () => {
    const sample = await sampleRegister();
    try {
      await command(sample.folder, ['sweep']);
      const queue = await command(sample.folder, ['mail', 'queue', '--json']);
      const waiting = JSON.parse(queue.out) as { id: number; state: string; subject: string; channel: string }[];
      expect(waiting.map(({ channel }) => channel).toSorted()).toEqual(['letter', 'mail', 'mail']);
      const mail = waiting.find(({ channel }) => channel === 'mail');
      expect((await command(sample.folder, ['mail', 'queue'])).out).toContain(mail?.subject);
      const shown = await command(sample.folder, ['mail', 'show', String(mail?.id)]);
      expect(shown.out).toContain(`Subject: ${mail?.subject}`);
      expect(shown.out.length).toBeGreaterThan(500);
      expect((await command(sample.folder, ['mail', 'retry'])).out).toMatch(/^2 queued/);
      expect(JSON.parse((await command(sample.folder, ['mail', 'retry', String(mail?.id), '--json'])).out)).toEqual({
        queued: 1,
      });
      expect((await command(sample.folder, ['mail', 'parked'])).out).toBe('No message is parked.\n');
      for (const args of [
        ['show', '999'],
        ['retry', '999'],
      ]) {
        expect((await command(sample.folder, ['mail', ...args])).code).toBe(4);
      }
      expect((await command(sample.folder, ['mail', 'show', 'first'])).code).toBe(2);
    } finally {
      await sample.remove();
    }
  });
});
