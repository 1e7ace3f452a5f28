/** Exit codes of the command line, the same for every command. */
export const EXIT = {
  done: 0,
  /** Something unexpected: see the message. */
  unexpected: 1,
  /** The command line or the configuration cannot be understood. */
  usage: 2,
  /** Input was refused and nothing was changed. */
  refused: 3,
  /** What was asked for is not in the register. */
  notFound: 4,
  /** Part of it was done: good rows kept and bad ones handed back, or a sweep with fences that could not be forecast. */
  partly: 5,
} as const;

export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

/** The exit codes as help shows them. */
export const EXIT_CODES_TEXT = `
Exit codes:
  0  done
  1  something unexpected went wrong
  2  the command line or the configuration cannot be understood
  3  input was refused; nothing was changed
  4  what was asked for is not in the register
  5  partly done: good rows kept and bad ones handed back, or some fences could not be forecast`;
