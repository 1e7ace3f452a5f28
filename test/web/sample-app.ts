import { join } from 'node:path';
import type { NewAccount } from '../../src/register/account-store.ts';
import type { Clock } from '../../src/service/clock.ts';
import { composeNotices } from '../../src/service/compose-notices.ts';
import type { Config } from '../../src/service/config.ts';
import { loadConfig } from '../../src/service/config.ts';
import { drainOutbox } from '../../src/service/drain-outbox.ts';
import { createLog } from '../../src/service/log.ts';
import { createLongWork } from '../../src/service/long-work.ts';
import { startMailCatcher } from '../../src/service/mail-catcher.ts';
import { mailServerAddress, smtpTransport } from '../../src/service/mail-transport.ts';
import { createPlanRunner } from '../../src/service/plan-runner.ts';
import type { SweepProgress } from '../../src/service/run-sweep.ts';
import { isForThisMachine } from '../../src/service/service-address.ts';
import { createMetrics } from '../../src/service/service-metrics.ts';
import { createServiceView } from '../../src/service/service-view.ts';
import { makeApp } from '../../src/web/make-app.tsx';
import { cookieOf, storeAccount } from './accounts/signed-in.ts';
import { SAMPLE_NOW, sampleRegister } from './sample-register.ts';

export type SampleApp = Awaited<ReturnType<typeof sampleApp>>;

/** The pages over a real register, with the real mail catcher unless told otherwise. Close it when done. */
export async function sampleApp(
  options: {
    readonly swept?: boolean;
    readonly empty?: boolean;
    readonly catcher?: boolean;
    readonly publicUrl?: string;
    readonly progress?: SweepProgress;
    /** False where nobody has an account yet. */
    readonly accounts?: boolean;
    readonly setupCode?: string;
    /** How long a page waits for long work [ms]; until its end unless given. */
    readonly patienceMs?: number;
    /** The moment at which everything is looked at; the sample register's unless given. */
    readonly now?: Clock;
  } = {},
) {
  const now = options.now ?? SAMPLE_NOW;
  const { register, folder, remove } = await sampleRegister(options);
  const config: Config = loadConfig({
    STORMPALE_DATA: folder,
    STORMPALE_LOG_LEVEL: 'silent',
    ...(options.publicUrl ? { STORMPALE_PUBLIC_URL: options.publicUrl } : {}),
  });
  const catcher =
    options.catcher === false ? null : await startMailCatcher({ port: 0, folder: join(folder, 'caught-mail'), now });
  const metrics = createMetrics(register);
  const view = createServiceView({
    register,
    config,
    clock: now,
    catcher,
    metrics,
    progress: () => options.progress ?? null,
    isClosing: () => false,
  });
  const log = createLog('silent');
  const planner = createPlanRunner({ register, clock: now, log });
  const { patienceMs = Number.POSITIVE_INFINITY, setupCode = null } = options;
  const work = createLongWork({ register, clock: now, log, patienceMs });
  const parts = { register, view, config, clock: now, log, planner, work, setupCode };
  const pages = makeApp(parts);
  const isLocal = isForThisMachine(config);
  const office = options.accounts === false ? null : await storeAccount(register, now);
  const cookie = office && (await cookieOf(register, office, { now, isLocal }));
  /** The pages as the office sees them, signed in. */
  const app = {
    request: async (path: string, init: { method?: string; headers?: Readonly<Record<string, string>> } = {}) =>
      pages.request(path, { ...init, headers: { ...(cookie ? { cookie } : {}), ...init.headers } }),
  };
  return {
    app,
    /** The pages as they are for whoever asks. */
    pages,
    /** What the pages are made from. */
    parts,
    register,
    config,
    /** What the browser of the office sends; null without accounts. */
    cookie,
    /** Signs another account in. */
    signIn: async (some: Partial<NewAccount>): Promise<string> =>
      cookieOf(register, await storeAccount(register, now, some), { now, isLocal }),
    text: async (path: string): Promise<string> => (await app.request(path)).text(),
    /** Writes the owners' messages and hands the mails to the catcher. */
    sendMail: async (): Promise<void> => {
      if (!catcher) throw new Error('this sample catches no mail');
      const office = {
        name: 'Sample Fence Office',
        phone: null,
        email: 'office@example.org',
        postalAddress: '3 Office Row\nPelican Reach, South Carolina 00000',
      };
      await composeNotices(register, {
        now,
        sender: {
          office,
          from: 'office@example.org',
          timeZone: 'UTC',
          gap: null,
          mailReachesOwners: false,
          publicUrl: config.publicUrl,
        },
      });
      const transport = smtpTransport(mailServerAddress(`smtp://127.0.0.1:${catcher.port}`));
      await drainOutbox(register, { now, transport });
    },
    close: async (): Promise<void> => {
      await planner.close();
      await work.close();
      await catcher?.close();
      await remove();
    },
  };
}
