import type { AddressInfo } from 'node:net';
import { serve } from '@hono/node-server';
import cron from 'node-cron';
import { hasAccounts } from '../register/account-store.ts';
import type { Register } from '../register/database.ts';
import { openRegister } from '../register/database.ts';
import { endLostLeases } from '../register/outbox-claims.ts';
import { reconsiderHolds } from '../register/outbox-holds.ts';
import { readSettings } from '../register/settings-store.ts';
import { spokenCode } from './account-rules.ts';
import { watchBounceFolder } from './bounce-folder.ts';
import type { Clock } from './clock.ts';
import { isoUtc } from './clock.ts';
import { createClosers } from './closers.ts';
import type { Config } from './config.ts';
import { startDrainLoop } from './drain-loop.ts';
import { drainOutbox } from './drain-outbox.ts';
import type { Logger } from './log.ts';
import { createLongWork, type LongWork } from './long-work.ts';
import type { MailCatcher } from './mail-catcher.ts';
import { startMailCatcher } from './mail-catcher.ts';
import { mailServerAddress, smtpTransport } from './mail-transport.ts';
import { createPlanRunner, type PlanRunner } from './plan-runner.ts';
import { hostInUrl, isForThisMachine, isLoopbackHost } from './service-address.ts';
import { claimDataFolder } from './service-claim.ts';
import { createMetrics } from './service-metrics.ts';
import type { ServiceView } from './service-view.ts';
import { createServiceView } from './service-view.ts';
import { createSweepRunner } from './sweep-runner.ts';

/** Asks the register what is due so often besides the nightly nudge: a laptop that slept through it catches up. */
const ASK_EVERY_MS = 10 * 60_000;

/** A page waits so long for long work before it says how far that is [ms]. */
const PATIENCE_MS = 2_000;

/** A page still loading when the service closes has so long to end [ms]. */
const GRACE_MS = 3_000;

/** What the pages are made from. */
export interface AppParts {
  readonly register: Register;
  readonly view: ServiceView;
  readonly config: Config;
  readonly clock: Clock;
  readonly log: Logger;
  readonly planner: PlanRunner;
  readonly work: LongWork;
  /** What the first run asks for where the pages are not for this machine only; null where it asks for nothing. */
  readonly setupCode: string | null;
}

/** The pages: whatever answers a web request. */
export interface App {
  readonly fetch: (request: Request) => Response | Promise<Response>;
}

/** A service that runs. */
export interface Service {
  /** Where its pages are, with the port it got. */
  readonly url: string;
  readonly register: Register;
  readonly view: ServiceView;
  /** What the page of the first run asks for; null where it asks for nothing. */
  readonly setupCode: string | null;
  /** Settles once the sweep that was due on start has ended and the messages that were left are written. */
  readonly caughtUp: Promise<void>;
  /** Stops taking work, ends what is at hand, closes everything. Calling it again waits for the same end. */
  close(): Promise<void>;
}

interface Listening {
  readonly port: number;
  close(): Promise<void>;
}

function listen(app: App, config: Config): Promise<Listening> {
  return new Promise((resolve, reject) => {
    const server = serve({ fetch: app.fetch, hostname: config.host, port: config.port }, (address: AddressInfo) =>
      resolve({
        port: address.port,
        close: () =>
          new Promise((closed) => {
            server.close(() => closed());
            if ('closeIdleConnections' in server) server.closeIdleConnections();
            setTimeout(() => 'closeAllConnections' in server && server.closeAllConnections(), GRACE_MS).unref();
          }),
      }),
    );
    server.once('error', (error: NodeJS.ErrnoException) =>
      reject(
        error.code === 'EADDRINUSE'
          ? new Error(
              `port ${config.port} on ${config.host} is taken: stop what uses it, or set STORMPALE_PORT to another`,
              { cause: error },
            )
          : error,
      ),
    );
  });
}

/**
 * What the first run asks for: a code that whoever sees the service's log can read out, where others could reach its page; null
 * where they cannot, or somebody has an account. Throws where the pages would be open to others before anybody has one.
 */
async function firstRunCode(register: Register, config: Config, log: Logger): Promise<string | null> {
  if (await hasAccounts(register.db)) return null;
  if (!isLoopbackHost(config.host)) {
    throw new Error(
      `nobody has an account in this register, so its pages are not served on ${config.host} yet: make one with "stormpale account add NAME --role office", or start once without STORMPALE_HOST and open the page`,
    );
  }
  if (isForThisMachine(config)) return null;
  const code = spokenCode(3);
  log.info(`nobody has an account yet: open ${new URL('/setup', config.publicUrl).href} and enter the code ${code}`);
  return code;
}

function transportFor(config: Config, catcher: MailCatcher | null) {
  if (catcher) return smtpTransport(mailServerAddress(`smtp://127.0.0.1:${catcher.port}`));
  return smtpTransport(mailServerAddress(config.smtpUrl ?? '', config.delivery.authorityFile));
}

/**
 * Starts the service: register, mail catcher (where no mail server is configured), sweep, outbox and pages. A sweep that is
 * due is begun at once in its thread, and messages that were left are written; the nightly one is a nudge that asks the
 * register what is due.
 * Throws, with everything closed again, where the port is taken or the register cannot be opened.
 */
export async function startService(options: {
  readonly config: Config;
  readonly clock: Clock;
  readonly log: Logger;
  readonly makeApp: (parts: AppParts) => App;
}): Promise<Service> {
  const { config, clock, log } = options;
  const closers = createClosers(log);
  let closing: Promise<void> | null = null;
  try {
    const claim = claimDataFolder(config.dataFolder, clock);
    closers.add(async () => claim.release());
    const register = await openRegister(config.registerPath);
    closers.add(() => register.close());
    const setupCode = await firstRunCode(register, config, log);
    const catcher = config.smtpUrl
      ? null
      : await startMailCatcher({ port: 0, folder: config.caughtMailFolder, now: clock });
    if (catcher) closers.add(() => catcher.close());
    const metrics = createMetrics(register);
    const transport = transportFor(config, catcher);
    // nobody else works on this folder: what is leased was left by a service that is gone
    await endLostLeases(register, { at: isoUtc(clock()), until: null });
    await reconsiderHolds(register, isoUtc(clock()));
    const { quietHours, perMinute, giveUpDays } = config.delivery;
    const { timeZone } = await readSettings(register.db);
    // what the service catches itself reaches nobody: no hour and no rate matters
    const paced = catcher ? {} : { rules: { quietHours, perMinute, timeZone } };
    const drain = startDrainLoop({
      drain: (signal) =>
        drainOutbox(register, { now: clock, transport, signal, giveUpAfterHours: giveUpDays * 24, ...paced }),
      log,
      onReport: (report) => metrics.countDrain(report),
    });
    closers.add(() => drain.close());
    const folder = config.delivery.bounceFolder;
    const bounces = folder === null ? null : watchBounceFolder(register, { folder, now: clock, log });
    if (bounces) closers.add(() => bounces.close());
    const runner = createSweepRunner({
      register,
      config,
      clock,
      log,
      onOutcome: (outcome) => {
        metrics.countSweep(outcome);
        drain.nudge();
      },
      onMessages: () => drain.nudge(),
    });
    closers.add(() => runner.close());
    const planner = createPlanRunner({ register, clock, log });
    closers.add(() => planner.close());
    const work = createLongWork({ register, clock, log, patienceMs: PATIENCE_MS });
    closers.add(() => work.close());
    const ask = (onStart: boolean): Promise<void> =>
      runner.ask({ onStart }).then(
        () => undefined,
        (error: unknown) => log.error({ err: error }, 'could not ask the register what is due'),
      );
    const view = createServiceView({
      register,
      config,
      clock,
      catcher,
      metrics,
      progress: () => runner.progress(),
      isClosing: () => closing !== null,
      runner,
    });
    const listening = await listen(
      options.makeApp({ register, view, config, clock, log, planner, work, setupCode }),
      config,
    );
    closers.add(() => listening.close());
    const zone = config.timeZone ?? (await readSettings(register.db)).timeZone;
    const [hour = '4', minute = '30'] = config.sweepAt.split(':');
    const nightly = cron.schedule(`${Number(minute)} ${Number(hour)} * * *`, () => ask(false), { timezone: zone });
    const asking = setInterval(() => void ask(false), ASK_EVERY_MS);
    closers.add(async () => {
      clearInterval(asking);
      await nightly.destroy();
    });
    const caughtUp = ask(true);
    closers.add(async () => {
      await runner.close();
      await caughtUp;
    });
    const url = `http://${hostInUrl(config.host)}:${listening.port}`;
    log.info({ url, register: config.registerPath, mail: catcher ? 'caught' : 'smtp' }, 'service started');
    return {
      url,
      register,
      view,
      setupCode,
      caughtUp,
      close: () => {
        closing ??= closers.closeAll().then(() => log.info('service closed'));
        return closing;
      },
    };
  } catch (error) {
    // what closing says is in the log; why the start failed is what the caller needs
    await closers.closeAll().catch(() => undefined);
    throw error;
  }
}

/**
 * Closes the service on SIGTERM or SIGINT, so that a stop loses nothing. Returns once a signal has been dealt with; rejects
 * where a part could not be closed.
 */
export function closeOnSignal(service: Service): Promise<NodeJS.Signals> {
  return new Promise((resolve, reject) => {
    const stop = (signal: NodeJS.Signals): void => {
      service.close().then(() => resolve(signal), reject);
    };
    process.once('SIGTERM', stop);
    process.once('SIGINT', stop);
  });
}
