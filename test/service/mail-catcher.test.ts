import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { composeNotices } from '../../src/service/compose-notices.ts';
import { drainOutbox } from '../../src/service/drain-outbox.ts';
import { startMailCatcher } from '../../src/service/mail-catcher.ts';
import { mailServerAddress, smtpTransport } from '../../src/service/mail-transport.ts';
import { runSweep } from '../../src/service/run-sweep.ts';
import { fenceRegister, JANUARY, manyFences, SENDER, temporaryFolder } from './fence-register.ts';

const now = () => JANUARY;

async function catcherIn(folder: string) {
  const catcher = await startMailCatcher({ port: 0, folder, now });
  onTestFinished(() => catcher.close());
  return catcher;
}

it('catches the mails of a sweep, shows them with their pictures, and still has them after a restart', async () => {
  const folder = join(temporaryFolder(), 'caught-mail');
  const register = await fenceRegister({
    fences: manyFences(5, { installedEarliest: '2005-04-15', installedLatest: '2005-04-15' }),
  });
  await runSweep(register, { now });
  await composeNotices(register, { now, sender: SENDER });
  const first = await catcherIn(folder);
  const transport = smtpTransport(mailServerAddress(`smtp://127.0.0.1:${first.port}`));
  expect(await drainOutbox(register, { now, transport })).toMatchObject({ sent: 1 });
  await first.close();

  const catcher = await catcherIn(folder);
  const [mail, ...others] = await catcher.list();
  expect(others).toEqual([]);
  expect(mail?.caughtAt).toBe('2027-01-15T12:00:00.000Z');
  expect(mail?.from).toContain('notices@example.org');
  const content = await catcher.get(mail?.id ?? '');
  expect(content?.subject).toBe(mail?.subject);
  expect(content?.html?.match(/src="data:image\/png;base64,/g)).toHaveLength(3);
  expect(content?.html).not.toContain('cid:');
  expect(content?.files.map((file) => file.name)).toEqual(['fences.csv']);
});

it('gives nothing for an id that is not one of its own', async () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'secret.eml'), 'Subject: not caught\r\n\r\n');
  const catcher = await catcherIn(join(folder, 'caught-mail'));
  for (const id of ['../secret', 'secret', '', '20270115T120000000Z-00000000', '..%2Fsecret']) {
    expect(await catcher.get(id)).toBeNull();
  }
});
