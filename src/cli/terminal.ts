import { EXIT } from './exit-codes.ts';

/** Where a command reads and writes; the process's own, or a test's. */
export interface Terminal {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  readonly errIsTerminal: boolean;
  /** Width of standard output in characters; 80 where it is no terminal. */
  readonly columns: number;
}

/** The terminal of this process. Where whoever reads its output stops reading, as `head` does, the program ends quietly. */
export function processTerminal(): Terminal {
  const onFailure = (error: NodeJS.ErrnoException): void => {
    if (error.code !== 'EPIPE') throw error;
    process.exit(EXIT.done);
  };
  process.stdout.on('error', onFailure);
  process.stderr.on('error', onFailure);
  return {
    out: (text) => void process.stdout.write(text),
    err: (text) => void process.stderr.write(text),
    errIsTerminal: process.stderr.isTTY === true,
    columns: process.stdout.columns ?? 80,
  };
}

/** A counter on one line of standard error that rewrites itself; silent where that is no terminal. */
export function counter(
  terminal: Terminal,
  what: string,
): { readonly show: (text: string) => void; readonly end: () => void } {
  let shown = false;
  return {
    show: (text) => {
      if (!terminal.errIsTerminal) return;
      terminal.err(`\r\x1b[2K${what} ${text}`);
      shown = true;
    },
    end: () => {
      if (shown) terminal.err('\r\x1b[2K');
      shown = false;
    },
  };
}

/** One JSON document and a line end. */
export const jsonText = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;
