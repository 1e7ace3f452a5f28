import type { VisitAct } from '../register/visit-store.ts';
import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';

/** Who does something to plans and visits, and why. */
export interface ActOptions {
  readonly by?: string;
  readonly because?: string;
}

const LONGEST_REASON = 2000;
const LONGEST_NAME = 200;

/** Who and why, as it is kept. Throws `CliError` where it is too long, or a reason is given that says nothing. */
export function actOf(options: ActOptions): VisitAct {
  const by = options.by?.trim() ?? '';
  const because = options.because?.trim() ?? '';
  if (options.because !== undefined && because === '') {
    throw new CliError(EXIT.usage, '--because: empty', 'Nothing was changed. Say why, as --because "rain all day".');
  }
  for (const [name, text, longest] of [
    ['--because', because, LONGEST_REASON],
    ['--by', by, LONGEST_NAME],
  ] as const) {
    if (text.length > longest) {
      throw new CliError(
        EXIT.usage,
        `${name}: ${text.length} characters, and ${longest} are kept`,
        'Nothing was changed. Write it shorter.',
      );
    }
  }
  return { by, because };
}
