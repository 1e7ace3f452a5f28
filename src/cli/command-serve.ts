import { listFenceRefs } from '../register/fence-facts-store.ts';
import type { Config } from '../service/config.ts';
import { importDemo } from '../service/import-demo.ts';
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
  const demo = options.demoIfEmpty && !options.empty && (await loadDemoIfEmpty(context, config));
  const log = createLog(config.logLevel, terminal.errIsTerminal ? quietLog(terminal.err) : undefined);
  const service = await startService({ config, clock, log, makeApp });
  const ended = closeOnSignal(service);
  terminal.out(welcome(config, service.url, demo === true));
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

async function loadDemoIfEmpty(context: CliContext, config: Config): Promise<boolean> {
  const { clock, terminal } = context;
  return withRegister(config, async (register) => {
    if ((await listFenceRefs(register, null, 1)).length > 0) return false;
    const loading = counter(terminal, 'Loading the demo:');
    await importDemo(register, { now: clock, onProgress: (done, total) => loading.show(`${done} of ${total} rows`) });
    loading.end();
    const progress = counter(terminal, 'Sweeping the demo:');
    const { report } = await sweepRegister(register, {
      now: clock,
      sender: config,
      onProgress: ({ done }) => progress.show(`${done} fences`),
    });
    progress.end();
    return report.kind === 'finished';
  });
}

function welcome(config: Config, url: string, demo: boolean): string {
  const lines = [
    `Stormpale is up: ${url}`,
    config.smtpUrl === null
      ? `Mail to owners is caught, not sent; read it at ${url}/mail`
      : 'Mail to owners is sent through the configured mail server.',
    ...(demo ? ['The register holds an invented demo. To begin with your own, empty one: npm start -- --empty'] : []),
    `Data lie in ${config.dataFolder}`,
    'Ctrl-C stops.',
  ];
  return `${lines.join('\n')}\n`;
}
