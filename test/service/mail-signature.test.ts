import { generateKeyPairSync } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { dkimVerify } from 'mailauth/lib/dkim/verify.js';
import { describe, expect, it } from 'vitest';
import { listOutbox, loadOutboxBytes } from '../../src/register/outbox.ts';
import { composeNotices } from '../../src/service/compose-notices.ts';
import { drainOutbox } from '../../src/service/drain-outbox.ts';
import { dkimKeyReason, selectorReason, signedBytes } from '../../src/service/mail-signature.ts';
import { mailServerAddress, smtpTransport } from '../../src/service/mail-transport.ts';
import { runSweep } from '../../src/service/run-sweep.ts';
import { fenceRegister, JANUARY, manyFences, SENDER, temporaryFolder } from './fence-register.ts';
import { mailServer } from './mail-server.ts';

const { publicKey, privateKey } = generateKeyPairSync('rsa', { modulusLength: 2048 });
const PUBLISHED = publicKey.export({ type: 'spki', format: 'der' }).toString('base64');

function identity(key = privateKey) {
  const keyFile = join(temporaryFolder(), 'dkim.pem');
  writeFileSync(keyFile, key.export({ type: 'pkcs8', format: 'pem' }));
  return { domain: 'example.org', selector: 'fences2027', keyFile };
}

/** What a receiver that asks this made-up name server finds out about a mail's signature. */
async function verdictOn(raw: Uint8Array | string) {
  const asked: string[] = [];
  const resolver = (name: string, type: string): Promise<string[][]> => {
    asked.push(`${type} ${name}`);
    return Promise.resolve([[`v=DKIM1; k=rsa; p=${PUBLISHED}`]]);
  };
  const { results } = await dkimVerify(Buffer.from(raw), { resolver });
  return { asked, results };
}

/** The mails of a register that signs them, as a server got them, and the register. */
async function signedMails() {
  const register = await fenceRegister({ fences: manyFences(5) });
  await runSweep(register, { now: () => JANUARY });
  await composeNotices(register, { now: () => JANUARY, sender: { ...SENDER, dkim: identity() } });
  return register;
}

describe('signedBytes', () => {
  it('makes signatures that another implementation verifies, over the headers that matter', async () => {
    const register = await signedMails();
    const server = await mailServer();
    const transport = smtpTransport(mailServerAddress(`smtp://127.0.0.1:${server.port}`));
    expect(await drainOutbox(register, { now: () => JANUARY, transport })).toMatchObject({ again: 0, parked: 0 });
    expect(server.received.length).toBeGreaterThan(0);
    for (const { raw } of server.received) {
      const { asked, results } = await verdictOn(raw);
      expect(asked).toEqual(['TXT fences2027._domainkey.example.org']);
      expect(results).toHaveLength(1);
      expect(results[0]).toMatchObject({ status: { result: 'pass', aligned: 'example.org' } });
      const { signingHeaders } = results[0] as { readonly signingHeaders?: { readonly keys: string } };
      const keys = signingHeaders?.keys.toLowerCase() ?? '';
      for (const header of ['from', 'to', 'subject', 'date', 'message-id', 'reply-to', 'list-unsubscribe']) {
        expect(keys.split(/:\s*/)).toContain(header);
      }
    }
  });

  it('is seen to be broken where a byte of the text, the subject or the way to unsubscribe is changed', async () => {
    const register = await signedMails();
    const [entry] = await listOutbox(register, { limit: 1 });
    const raw = Buffer.from((await loadOutboxBytes(register, entry?.id ?? 0))?.raw ?? []).toString('latin1');
    const changes = [
      raw.replace(/(\r\n\r\n[\s\S]*?)fence/, '$1fense'),
      raw.replace(/^Subject: ./m, 'Subject: X'),
      raw.replace(/^List-Unsubscribe: <mailto:/m, 'List-Unsubscribe: <mailto:x'),
    ];
    for (const changed of changes) {
      expect(changed).not.toBe(raw);
      const { results } = await verdictOn(Buffer.from(changed, 'latin1'));
      expect(results[0]?.status.result).not.toBe('pass');
    }
  });

  it('gives the same bytes the same signature, and leaves them as they are behind it', async () => {
    const raw = Buffer.from('From: a@example.org\r\nSubject: one\r\n\r\nText\r\n');
    const dkim = identity();
    const signed = await signedBytes(raw, dkim);
    expect((await signedBytes(raw, dkim)).equals(signed)).toBe(true);
    expect(signed.subarray(signed.length - raw.length).equals(raw)).toBe(true);
  });

  it('sends nothing unsigned where the key does not sign', async () => {
    const raw = Buffer.from('From: a@example.org\r\n\r\nText\r\n');
    const elliptic = generateKeyPairSync('ec', { namedCurve: 'P-256' }).privateKey;
    await expect(signedBytes(raw, { ...identity(), keyFile: '/nowhere/key.pem' })).rejects.toThrow(/ENOENT/);
    const wrong = identity(elliptic);
    writeFileSync(wrong.keyFile, 'no key');
    await expect(signedBytes(raw, wrong)).rejects.toThrow(/could not be signed/);
  });
});

describe('what is no identity', () => {
  it('is named with the way out', () => {
    const file = (text: string): string => {
      const path = join(temporaryFolder(), 'key.pem');
      writeFileSync(path, text);
      return path;
    };
    const pem = (key: typeof privateKey): string => key.export({ type: 'pkcs8', format: 'pem' }).toString();
    expect(dkimKeyReason(file(pem(privateKey)))).toBeNull();
    expect(dkimKeyReason('/nowhere/key.pem')).toContain('ENOENT');
    expect(dkimKeyReason(file('no key'))).toContain('openssl genrsa');
    expect(dkimKeyReason(file(pem(generateKeyPairSync('ed25519').privateKey)))).toContain('an RSA key is needed');
    expect(dkimKeyReason(file(pem(generateKeyPairSync('rsa', { modulusLength: 512 }).privateKey)))).toContain('512');
    expect(selectorReason('fences2027')).toBeNull();
    expect(selectorReason('a.b')).toBeNull();
    for (const text of ['', 'a b', 'a;p=', '-a', 'a..b']) expect(selectorReason(text)).toContain('selector');
  });
});
