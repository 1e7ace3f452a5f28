import { existsSync, mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { checkProof, historyText, type MailProof, mailProof, type ProvenHistory } from '../service/mail-proof.ts';
import type { CliContext } from './cli-context.ts';
import { configOf, withExistingRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import { type MailOptions, messageNumber } from './command-mail.ts';
import { EXIT } from './exit-codes.ts';
import { jsonText } from './terminal.ts';

/** Options of `mail proof`. */
export interface ProofOptions extends MailOptions {
  readonly out: string;
}

/** The name that everything of one export begins with: the named file's without its end, or one made in the named folder. */
function stemOf(out: string, { history }: MailProof): { readonly stem: string; readonly end: string } {
  const end = history.message.channel === 'mail' ? '.eml' : '.html';
  if (out.toLowerCase().endsWith(end)) return { stem: out.slice(0, -end.length), end };
  if (existsSync(out) && !statSync(out).isDirectory()) {
    throw new CliError(EXIT.usage, `${out} is there and no folder`, `name a folder, or a file that ends in ${end}`);
  }
  mkdirSync(out, { recursive: true });
  return { stem: join(out, `message-${history.message.id}`), end };
}

/** Writes out a message's exact bytes, its history to read and to check, and the reports that came back. */
export async function runMailProof(context: CliContext, which: string, options: ProofOptions): Promise<void> {
  const by = /^<.*>$/.test(which) ? { messageId: which } : { id: messageNumber(which) };
  const proof = await withExistingRegister(configOf(context, options), (register) =>
    mailProof(register, by, { now: context.clock }),
  );
  if (!proof) {
    throw new CliError(
      EXIT.notFound,
      `no message ${which} in the outbox`,
      'write a number as "stormpale mail queue" or the page /outbox show them, or a Message-ID with its angle brackets',
    );
  }
  const { stem, end } = stemOf(options.out, proof);
  const files: readonly (readonly [name: string, content: string | Uint8Array])[] = [
    [`${stem}${end}`, proof.raw],
    [`${stem}.history.json`, jsonText(proof.history)],
    [`${stem}.history.txt`, historyText(proof.history)],
    ...proof.reports.map((raw, index) => [`${stem}.report-${index + 1}.eml`, raw] as const),
  ];
  for (const [name, content] of files) writeFileSync(name, content);
  const { terminal } = context;
  const names = files.map(([name]) => name);
  if (options.json) terminal.out(jsonText({ files: names, sha256: proof.history.message.sha256 }));
  else
    terminal.out(`Written:\n${names.map((name) => `  ${name}\n`).join('')}SHA-256 ${proof.history.message.sha256}\n`);
}

function read(path: string): Buffer {
  try {
    return readFileSync(path);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? 'unknown';
    throw new CliError(
      EXIT.notFound,
      `${path} cannot be read (${code})`,
      'name the .eml or .html file that "stormpale mail proof" wrote; its history lies beside it',
    );
  }
}

function historyFrom(path: string): ProvenHistory {
  try {
    const history = JSON.parse(read(path).toString('utf8')) as ProvenHistory;
    if (typeof history.message.sha256 === 'string' && typeof history.seal === 'string') return history;
  } catch (error) {
    if (error instanceof CliError) throw error;
  }
  throw new CliError(
    EXIT.refused,
    `${path} is no history`,
    'name a message whose history "stormpale mail proof" wrote',
  );
}

/** Checks an exported message against the history beside it, and that against the register where there is one. */
export async function runMailVerify(context: CliContext, file: string, options: MailOptions): Promise<void> {
  const raw = read(file);
  const history = historyFrom(file.replace(/\.(eml|html)$/i, '.history.json'));
  const config = configOf(context, options);
  const checks = existsSync(config.registerPath)
    ? await withExistingRegister(config, (register) => checkProof(raw, history, register))
    : await checkProof(raw, history, null);
  const { terminal, end } = context;
  const wrong = checks.some(({ ok }) => ok === false);
  if (options.json) terminal.out(jsonText({ ok: !wrong, checks }));
  else {
    const word = (ok: boolean | null): string => (ok === null ? 'not checked' : ok ? 'yes' : 'NO');
    terminal.out(checks.map(({ what, ok, found }) => `${word(ok)}: ${what} (${found})\n`).join(''));
    terminal.out(wrong ? 'This is not what was sent.\n' : 'This is what was sent, byte for byte.\n');
  }
  if (wrong) end(EXIT.refused);
}
