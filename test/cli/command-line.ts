import type { ExitCode } from '../../src/cli/exit-codes.ts';
import { runCli } from '../../src/cli/run-cli.ts';
import type { Clock } from '../../src/service/clock.ts';
import { SAMPLE_NOW } from '../web/sample-register.ts';

/** What one command line came to. */
export interface CommandEnd {
  readonly code: ExitCode;
  readonly out: string;
  readonly err: string;
}

/** Who writes to owners: without a name and an address no letter is written. */
const OFFICE = { STORMPALE_OFFICE_NAME: 'Sample Fence Office', STORMPALE_OFFICE_EMAIL: 'office@example.org' };

/** Runs a command line on the data of a folder, at the sample's moment and without a terminal unless told otherwise. */
export async function command(
  folder: string,
  args: readonly string[],
  options: {
    readonly errIsTerminal?: boolean;
    readonly env?: Readonly<Record<string, string>>;
    readonly clock?: Clock;
  } = {},
): Promise<CommandEnd> {
  let [out, err] = ['', ''];
  const code = await runCli(['--data', folder, ...args], {
    terminal: {
      out: (text) => {
        out += text;
      },
      err: (text) => {
        err += text;
      },
      errIsTerminal: options.errIsTerminal ?? false,
      columns: 80,
    },
    env: { ...OFFICE, ...options.env },
    clock: options.clock ?? SAMPLE_NOW,
  });
  return { code, out, err };
}
