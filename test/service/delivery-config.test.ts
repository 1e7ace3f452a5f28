import { generateKeyPairSync } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ConfigError, loadConfig } from '../../src/service/config.ts';
import { temporaryFolder } from './fence-register.ts';
import { madeCertificate } from './made-certificate.ts';

function written(name: string, text: string): string {
  const path = join(temporaryFolder(), name);
  writeFileSync(path, text);
  return path;
}

function keyFile(): string {
  const { privateKey } = generateKeyPairSync('rsa', { modulusLength: 2048 });
  return written('dkim.pem', privateKey.export({ type: 'pkcs8', format: 'pem' }).toString());
}

function problemsOf(env: Readonly<Record<string, string>>): readonly string[] {
  try {
    loadConfig(env);
  } catch (error) {
    if (error instanceof ConfigError) return error.problems.map(({ name, reason }) => `${name}: ${reason}`);
    throw error;
  }
  return [];
}

const dkim = () => ({
  STORMPALE_DKIM_DOMAIN: 'example.org',
  STORMPALE_DKIM_SELECTOR: 'fences2027',
  STORMPALE_DKIM_KEY_FILE: keyFile(),
});

describe('the options of delivery', () => {
  it('are what most offices want where nothing is set', () => {
    expect(loadConfig({}).delivery).toEqual({
      authorityFile: null,
      dkim: null,
      returnPattern: null,
      bounceFolder: null,
      quietHours: { from: '20:00', to: '08:00' },
      perMinute: 300,
      giveUpDays: 5,
    });
  });

  it('take a key to sign with, and hours, rates and addresses', () => {
    const signing = dkim();
    const { delivery } = loadConfig({
      ...signing,
      STORMPALE_MAIL_FROM: 'notices@mail.example.org',
      STORMPALE_BOUNCE_ADDRESS: 'Bounces+*@example.org',
      STORMPALE_QUIET_HOURS: 'none',
      STORMPALE_MAIL_PER_MINUTE: '20',
    });
    expect(delivery).toMatchObject({
      dkim: { domain: 'example.org', selector: 'fences2027', keyFile: signing.STORMPALE_DKIM_KEY_FILE },
      returnPattern: 'bounces+*@example.org',
      quietHours: null,
      perMinute: 20,
    });
  });

  it('ask for all that signing needs', () => {
    const { STORMPALE_DKIM_DOMAIN, STORMPALE_DKIM_KEY_FILE } = dkim();
    expect(problemsOf({ STORMPALE_DKIM_DOMAIN, STORMPALE_DKIM_KEY_FILE })).toEqual([
      'STORMPALE_DKIM_SELECTOR: missing: signing needs domain, selector and key file; give all three or none',
    ]);
  });

  it('refuse a signature that does not speak for the sender', () => {
    const [problem, ...others] = problemsOf({ ...dkim(), STORMPALE_MAIL_FROM: 'notices@badexample.org' });
    expect(others).toEqual([]);
    expect(problem).toContain('STORMPALE_DKIM_DOMAIN: mails come from badexample.org');
  });

  it('refuse a key and a certificate that are none, and never show what the file holds', () => {
    const path = written('secret.pem', 'geheim');
    const problems = problemsOf({
      ...dkim(),
      STORMPALE_DKIM_KEY_FILE: path,
      STORMPALE_SMTP_CA: path,
      STORMPALE_SMTP_URL: 'smtp://mail.example.org',
      STORMPALE_MAIL_FROM: 'notices@example.org',
    });
    expect(problems.map((each) => each.split(':')[0])).toEqual(['STORMPALE_SMTP_CA', 'STORMPALE_DKIM_KEY_FILE']);
    expect(problems.join('\n')).not.toContain('geheim');
    expect(problemsOf({ STORMPALE_SMTP_CA: '/nowhere.pem' }).join('\n')).toContain('ENOENT');
  });

  it('take certificates of a mail server, and ask for the server', () => {
    const STORMPALE_SMTP_CA = written('authority.pem', madeCertificate().cert);
    const server = { STORMPALE_SMTP_URL: 'smtp://127.0.0.1:2525', STORMPALE_MAIL_FROM: 'notices@example.org' };
    expect(loadConfig({ STORMPALE_SMTP_CA, ...server }).delivery.authorityFile).toBe(STORMPALE_SMTP_CA);
    expect(problemsOf({ STORMPALE_SMTP_CA })).toEqual([
      'STORMPALE_SMTP_URL: missing: certificates were named for a mail server, and none is; write one as smtp://mail.example.org',
    ]);
  });
});
