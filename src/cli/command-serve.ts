import { hasAccounts } from '../register/account-store.ts';
import { listFenceRefs } from '../register/fence-facts-store.ts';
import { countFences } from '../register/fence-list.ts';
import { readSettings } from '../register/settings-store.ts';
import type { Config } from '../service/config.ts';
import { holdsDemo, importDemo } from '../service/import-demo.ts';
import { createLog } from '../service/log.ts';
import { closeOnSignal, startService } from '../service/service.ts';
import { sweepRegister } from '../service/sweep-register.ts';
import { makeApp } from '../web/make-app.tsx';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { configOf, withRegister } from './cli-context.ts';
import { counter } from './terminal.ts';

/** Options of `serve`. */
export interface ServeOptions extends GlobalOptions {
  /** Load the demo where the register holds no fences. */
  readonly demoIfEmpty?: boolean;
  /** Never load the demo. */
  readonly empty?: boolean;
}

/** Runs the service until a signal ends it. */
export async function runServe(context: CliContext, options: ServeOptions): Promise<void> {
  const config = configOf(context, options);
  const { clock, terminal } = context;
  if (options.demoIfEmpty && !options.empty) await loadDemoIfEmpty(context, config);
  const log = createLog(config.logLevel, terminal.errIsTerminal ? quietLog(terminal.err) : undefined);
  const service = await startService({ config, clock, log, makeApp });
  const ended = closeOnSignal(service);
  const { register } = service;
  terminal.out(
    welcome(config, {
      url: service.url,
      empty: options.empty === true,
      fences: await countFences(register),
      demo: await holdsDemo(register),
      accounts: await hasAccounts(register.db),
      setupCode: service.setupCode,
      zone: config.timeZone ?? (await readSettings(register.db)).timeZone,
    }),
  );
  await ended;
}

/** On a terminal only what needs a person is shown; the log of everything is for where output is collected. */
const quietLog = (err: (text: string) => void): { write: (line: string) => void } => ({
  write: (line) => {
    const entry = JSON.parse(line) as {
      readonly level: number;
      readonly msg?: string;
      readonly err?: { readonly message?: string };
    };
    if (entry.level >= 40) err(`${entry.msg ?? 'warning'}${entry.err?.message ? `: ${entry.err.message}` : ''}\n`);
  },
});

async function loadDemoIfEmpty(context: CliContext, config: Config): Promise<void> {
  const { clock, terminal } = context;
  await withRegister(config, async (register) => {
    if ((await listFenceRefs(register, null, 1)).length > 0) return;
    const loading = counter(terminal, 'Loading the demo:');
    await importDemo(register, { now: clock, onProgress: (done, total) => loading.show(`${done} of ${total} rows`) });
    loading.end();
    const progress = counter(terminal, 'Sweeping the demo:');
    await sweepRegister(register, {
      now: clock,
      sender: config,
      onProgress: ({ done }) => progress.show(`${done} fences`),
    });
    progress.end();
  });
}

const EMPTY_ONE = 'STORMPALE_DATA=./mine npm start -- --empty';

/** How somebody gets in; nothing where people have accounts. */
function signInLines({ publicUrl }: Config, { demo, accounts, setupCode }: Started): readonly string[] {
  if (accounts) return [];
  if (setupCode !== null) {
    return [`Nobody has an account yet: open ${new URL('/setup', publicUrl).href} and enter the code ${setupCode}`];
  }
  return demo
    ? ['Choose on the first page whom to be: the demo opens by one click, on this machine only.']
    : ['Nobody has an account yet: the first page makes the first one of the office.'];
}

/** What a service that has started is, and what its register holds. */
interface Started {
  readonly url: string;
  /** True where an empty register was asked for. */
  readonly empty: boolean;
  readonly fences: number;
  readonly demo: boolean;
  /** True where somebody has an account. */
  readonly accounts: boolean;
  /** What the page of the first run asks for; null where it asks for nothing. */
  readonly setupCode: string | null;
  /** Zone of the nightly sweep's time. */
  readonly zone: string;
}

function welcome(config: Config, started: Started): string {
  const { url, empty, fences, demo, zone } = started;
  const demoHint = empty ? '' : ` To begin with your own, empty one: ${EMPTY_ONE}`;
  const lines = [
    `Stormpale is up: ${url}`,
    ...signInLines(config, started),
    config.smtpUrl === null
      ? `Mail to owners is caught, not sent; read it at ${url}/mail`
      : 'Mail to owners is sent through the configured mail server.',
    ...(empty && fences > 0
      ? [
          `The register at ${config.registerPath} already holds ${fences === 1 ? '1 fence' : `${fences} fences`}. For an empty one: ${EMPTY_ONE}`,
        ]
      : []),
    ...(demo ? [`The register holds an invented demo.${demoHint}`] : []),
    `The register is swept every night at ${config.sweepAt} ${zone}.`,
    ...(fences === 0 ? ['For the time of another zone: STORMPALE_TIME_ZONE=America/Chicago'] : []),
    `Data lie in ${config.dataFolder}`,
    'Ctrl-C stops.',
  ];
  return `${lines.join('\n')}\n`;
}
