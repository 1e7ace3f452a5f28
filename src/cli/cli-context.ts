import { existsSync } from 'node:fs';
import type { Register } from '../register/database.ts';
import { openRegister } from '../register/database.ts';
import type { Clock } from '../service/clock.ts';
import type { Config } from '../service/config.ts';
import { loadConfig } from '../service/config.ts';
import { CliError } from './cli-error.ts';
import type { ExitCode } from './exit-codes.ts';
import { EXIT } from './exit-codes.ts';
import type { Terminal } from './terminal.ts';

/** Options that every command takes. */
export interface GlobalOptions {
  readonly data?: string;
  readonly config?: string;
}

/** What a command works with. */
export interface CliContext {
  readonly terminal: Terminal;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly clock: Clock;
  /** Sets the code with which the program ends. */
  readonly end: (code: ExitCode) => void;
}

/** The configuration that the environment, the file and the global options amount to. Throws `ConfigError`. */
export const configOf = (context: CliContext, options: GlobalOptions): Config =>
  loadConfig({
    ...context.env,
    ...(options.data === undefined ? {} : { STORMPALE_DATA: options.data }),
    ...(options.config === undefined ? {} : { STORMPALE_CONFIG: options.config }),
  });

/** Opens the register (creating it where there is none), hands it to the work, and closes it whatever comes of that. */
export async function withRegister<T>(config: Config, work: (register: Register) => Promise<T>): Promise<T> {
  const register = await openRegister(config.registerPath);
  try {
    return await work(register);
  } finally {
    await register.close();
  }
}

/** As `withRegister`, but refuses to create one: a mistyped folder must not look like an empty register. */
export async function withExistingRegister<T>(config: Config, work: (register: Register) => Promise<T>): Promise<T> {
  if (!existsSync(config.registerPath)) {
    throw new CliError(
      EXIT.notFound,
      `there is no register at ${config.registerPath}`,
      'name the folder of another with --data, or create one with "stormpale import" or "stormpale serve"',
    );
  }
  return withRegister(config, work);
}
