import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import { describe, expect, it, onTestFinished } from 'vitest';
import { packagePath } from '../../src/register/package-path.ts';
import { sampleRegister } from '../web/sample-register.ts';
import { command } from './command-line.ts';

const run = promisify(execFile);

async function sampleMail() {
  const { folder, remove } = await sampleRegister();
  onTestFinished(remove);
  await command(folder, ['sweep']);
  const waiting = JSON.parse((await command(folder, ['mail', 'queue', '--json'])).out) as readonly {
    readonly id: number;
    readonly channel: string;
  }[];
  const idOf = (channel: string): string => String(waiting.find((each) => each.channel === channel)?.id);
  return { folder, letter: idOf('letter'), mail: idOf('mail') };
}

describe('mail', { timeout: 60_000 }, () => {
  it('shows the text of a letter, without its HTML and its pictures', async () => {
    const { folder, letter } = await sampleMail();
    const { out } = await command(folder, ['mail', 'show', letter]);
    expect(out).toContain('Stay away from a leaning fence in wind');
    expect(out).not.toMatch(/<[a-z]+|base64|data:image/);
    expect(out.length).toBeLessThan(8000);
  });

  it('notes that a letter was posted, once, and refuses that of a mail', async () => {
    const { folder, letter, mail } = await sampleMail();
    const posted = await command(folder, ['mail', 'posted', letter, '--by', 'Nell', '--on', '2026-11-23']);
    expect(posted.out).toBe(`Letter ${letter} counts as posted on 2026-11-23 by Nell.\n`);
    expect((await command(folder, ['mail', 'show', letter])).out).toContain('Posted: 2026-11-23, by Nell');
    expect((await command(folder, ['mail', 'posted', letter, '--on', '2099-01-01'])).code).toBe(2);
    expect((await command(folder, ['mail', 'queue', '--json'])).out).not.toContain('"letter"');
    expect((await command(folder, ['mail', 'show', letter])).out).toContain(`No. ${letter}, sent`);
    for (const id of [letter, mail]) {
      const refused = await command(folder, ['mail', 'posted', id]);
      expect(refused).toMatchObject({ code: 4 });
      expect(refused.err).toContain(`no message ${id} is a letter to print`);
    }
  });

  it('cancels what has not left, letters too, once', async () => {
    const { folder, letter, mail } = await sampleMail();
    for (const id of [letter, mail]) {
      expect(JSON.parse((await command(folder, ['mail', 'cancel', id, '--json'])).out)).toEqual({
        cancelled: Number(id),
      });
      expect((await command(folder, ['mail', 'cancel', id])).code).toBe(4);
    }
    expect((await command(folder, ['mail', 'cancel', 'first'])).code).toBe(2);
  });

  it('ends quietly where whoever reads its output stops reading', async () => {
    const { folder, letter } = await sampleMail();
    const main = packagePath('src', 'cli', 'main.ts');
    const line = `"${process.execPath}" --import tsx "${main}" --data "${folder}" mail show ${letter}`;
    // the reader is gone before the first byte is written
    const { stdout, stderr } = await run('bash', ['-c', `(${line}; echo "code $?" >&2) | true`], {
      cwd: packagePath(),
    });
    expect(stdout).toBe('');
    expect(stderr).toBe('code 0\n');
  });
});
