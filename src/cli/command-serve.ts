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

/** What a service that has started is, and what its register holds. */
interface Started {
  readonly url: string;
  /** True where an empty register was asked for. */
  readonly empty: boolean;
  readonly fences: number;
  readonly demo: boolean;
  /** Zone of the nightly sweep's time. */
  readonly zone: string;
}

function welcome(config: Config, { url, empty, fences, demo, zone }: Started): string {
  const demoHint = empty ? '' : ` To begin with your own, empty one: ${EMPTY_ONE}`;
  const lines = [
    `Stormpale is up: ${url}`,
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
