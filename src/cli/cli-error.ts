import type { ExitCode } from './exit-codes.ts';

/** An end that the command line explains: one line of what went wrong, one of the way out. */
export class CliError extends Error {
  readonly code: ExitCode;
  readonly wayOut: string;
  constructor(code: ExitCode, what: string, wayOut: string) {
    super(what);
    this.name = 'CliError';
    this.code = code;
    this.wayOut = wayOut;
  }
}
