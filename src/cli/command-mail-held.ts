import { cautionsIn } from '../drawing/cautions.ts';
import { MATTER_RULES, type OwnerMatter } from '../notify/matter-rules.ts';
import type { HeldFilter, HeldNotice } from '../register/held-notices.ts';
import { listHeldNotices, releaseHeldNotices } from '../register/held-notices.ts';
import { holdMatter, listHeldMatters } from '../register/holding.ts';
import { listOfficeNotices, settleOfficeNotice } from '../register/office-notices.ts';
import { isoUtc } from '../service/clock.ts';
import type { ComposeReport } from '../service/compose-notices.ts';
import { coveringSentence } from '../service/preview-release.ts';
import { writeMessages } from '../service/sweep-register.ts';
import type { CliContext } from './cli-context.ts';
import { configOf, withExistingRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import type { MailOptions } from './command-mail.ts';
import { EXIT } from './exit-codes.ts';
import { plainTable } from './plain-table.ts';
import { jsonText } from './terminal.ts';

/** Options of `mail held`. */
export interface HeldOptions extends MailOptions {
  readonly matter?: OwnerMatter;
  readonly owner?: string;
}

/** Options of `mail release`. */
export interface ReleaseOptions extends HeldOptions {
  readonly all?: boolean;
  readonly sentence?: string;
}

/** Options of `mail hold`. */
export interface HoldOptions extends MailOptions {
  readonly matter?: OwnerMatter;
}

/** Options of `mail office`. */
export interface OfficeOptions extends MailOptions {
  readonly settle?: string;
  readonly by?: string;
}

const filterOf = ({ matter, owner }: HeldOptions): HeldFilter => ({
  ...(matter === undefined ? {} : { matter }),
  ...(owner === undefined ? {} : { ownerRef: owner }),
});

const count = (number: number, what: string): string => `${number} ${what}${number === 1 ? '' : 's'}`;

/** Lists what waits until the office releases it, the dangerous first. */
export async function runMailHeld(context: CliContext, options: HeldOptions): Promise<void> {
  const [held, matters] = await withExistingRegister(configOf(context, options), async (register) => [
    await listHeldNotices(register, filterOf(options)),
    await listHeldMatters(register),
  ]);
  const { terminal } = context;
  if (options.json) {
    terminal.out(jsonText({ held, matters }));
    return;
  }
  if (held.length === 0) terminal.out('Nothing is held.\n');
  else {
    const isUrgent = ({ matter }: HeldNotice): boolean => matter === 'dangerous';
    const ordered = [...held.filter(isUrgent), ...held.filter((notice) => !isUrgent(notice))];
    const rows = ordered.map((notice) => [
      String(notice.id),
      notice.matter,
      `${notice.fenceRef}, ${notice.siteName}`,
      `${notice.ownerName} (${notice.ownerRef})`,
      notice.held,
      notice.createdAt.slice(0, 10),
    ]);
    terminal.out(plainTable(['No.', 'Matter', 'Fence', 'Owner', 'Held by', 'Since'], rows, [0]));
    const owners = new Set(held.map(({ ownerRef }) => ownerRef)).size;
    terminal.out(
      `${count(held.length, 'notice')} to ${count(owners, 'owner')}. To send them: stormpale mail release\n`,
    );
    if (held.some(isUrgent))
      terminal.out('Owners of dangerous fences do not know of it yet. Call them, or release these first.\n');
    terminal.out(`${cautionsIn('en').brief}\n`);
  }
  if (matters.length > 0) terminal.out(`Matters that are held: ${matters.join(', ')}.\n`);
}

/** Releases held notices: all, of a matter, of an owner, or by their numbers; their messages are written at once. */
export async function runMailRelease(
  context: CliContext,
  numbers: readonly string[],
  options: ReleaseOptions,
): Promise<void> {
  const ids = numbers.map((text) => noticeNumber(text, 'mail held'));
  const narrowed = ids.length > 0 || options.matter !== undefined || options.owner !== undefined;
  if (narrowed === (options.all === true)) {
    throw new CliError(
      EXIT.usage,
      narrowed ? '--all goes with no number, matter or owner' : 'nothing says what to release',
      'write --all, --matter MATTER, --owner REF or numbers from "stormpale mail held"',
    );
  }
  const config = configOf(context, options);
  const { terminal, clock, end } = context;
  const { released, composed } = await withExistingRegister(config, async (register) => {
    const filter = { ...filterOf(options), ...(ids.length > 0 ? { ids } : {}) };
    const release = { at: isoUtc(clock()), covering: sentenceOf(options.sentence) };
    const done = await releaseHeldNotices(register, filter, release);
    if (done.notices === 0) {
      throw new CliError(EXIT.notFound, 'none of these is held', '"stormpale mail held" lists what is');
    }
    return { released: done, composed: await writeMessages(register, { now: clock, sender: config }) };
  });
  if (options.json) terminal.out(jsonText({ ...released, ...composed }));
  else {
    terminal.out(
      `Released ${count(released.notices, 'notice')} to ${count(released.owners, 'owner')}: ${count(composed.mails, 'mail')} and ${count(composed.letters, 'letter')} written; the running service sends the mails. What is no longer so was made void.\n`,
    );
  }
  tellFailures(context, composed);
  if (composed.failures.length > 0) end(EXIT.partly);
}

function tellFailures({ terminal }: CliContext, { failures }: ComposeReport): void {
  for (const { ownerRef, message } of failures) terminal.err(`Owner ${ownerRef}: ${message}\n`);
}

function sentenceOf(text: string | undefined): string | null {
  const sentence = coveringSentence(text ?? '');
  if ('value' in sentence) return sentence.value;
  throw new CliError(EXIT.usage, `--sentence: ${sentence.reason}`, 'nothing was released');
}

/** Shows which matters are held; with a matter, has it held from now on, or no longer. */
export async function runMailHold(context: CliContext, turn: string | undefined, options: HoldOptions): Promise<void> {
  const { matter } = options;
  if ((turn === undefined) !== (matter === undefined) || (turn !== undefined && turn !== 'on' && turn !== 'off')) {
    throw new CliError(
      EXIT.usage,
      'a matter and a turn go together',
      'write: stormpale mail hold --matter "two thirds" on',
    );
  }
  if (matter !== undefined && !MATTER_RULES[matter].mayBeHeld) {
    throw new CliError(
      EXIT.refused,
      `${matter} is never held: it goes out at once`,
      'docs/notices.md has the rule of every matter',
    );
  }
  const matters = await withExistingRegister(configOf(context, options), async (register) => {
    if (matter !== undefined) await holdMatter(register, matter, turn === 'on', isoUtc(context.clock()));
    return listHeldMatters(register);
  });
  const { terminal } = context;
  if (options.json) terminal.out(jsonText({ matters }));
  else {
    terminal.out(matters.length === 0 ? 'No matter is held.\n' : `Matters that are held: ${matters.join(', ')}.\n`);
    if (turn === 'off') terminal.out('What is held already stays so: "stormpale mail release" sends it.\n');
  }
}

/** Lists what the sweep found for the office itself, or notes one of them as settled. */
export async function runMailOffice(context: CliContext, options: OfficeOptions): Promise<void> {
  const settle = options.settle === undefined ? null : noticeNumber(options.settle, 'mail office');
  const open = await withExistingRegister(configOf(context, options), async (register) => {
    if (settle !== null) {
      const settled = await settleOfficeNotice(register, settle, { at: isoUtc(context.clock()), by: options.by ?? '' });
      if (!settled)
        throw new CliError(
          EXIT.notFound,
          `no notice ${settle} is open`,
          '"stormpale mail office" lists those that are',
        );
    }
    return listOfficeNotices(register);
  });
  const { terminal } = context;
  if (options.json) terminal.out(jsonText(open));
  else if (open.length === 0) terminal.out('Nothing waits for the office.\n');
  else {
    const rows = open.map((notice) => [
      String(notice.id),
      notice.matter,
      `${notice.fenceRef}, ${notice.siteName}`,
      notice.occasion.replace(/; told .*$/, ''),
      notice.createdAt.slice(0, 10),
    ]);
    terminal.out(plainTable(['No.', 'Matter', 'Fence', 'What', 'Since'], rows, [0]));
    terminal.out(`${cautionsIn('en').brief}\n`);
  }
}

function noticeNumber(text: string, command: string): number {
  if (/^\d{1,15}$/.test(text)) return Number(text);
  throw new CliError(
    EXIT.usage,
    `${JSON.stringify(text)} is no number of a notice`,
    `write a number as "stormpale ${command}" shows them`,
  );
}
