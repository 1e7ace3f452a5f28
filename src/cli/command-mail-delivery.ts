import { readFileSync } from 'node:fs';
import {
  listStoppedAddresses,
  listUnstoppedReports,
  type NotedReport,
  resumeAddress,
} from '../register/delivery-reports.ts';
import { isoUtc } from '../service/clock.ts';
import { NoDeliveryReport, reasonIn } from '../service/delivery-report.ts';
import { type TakenReport, takeReport } from '../service/take-report.ts';
import type { CliContext } from './cli-context.ts';
import { configOf, withExistingRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import type { MailOptions } from './command-mail.ts';
import { EXIT } from './exit-codes.ts';
import { plainTable } from './plain-table.ts';
import { jsonText } from './terminal.ts';

/** Reports that stopped no address are listed for so long [d]. */
const SHOWN_DAYS = 60;

function bytesOf(file: string): Buffer {
  try {
    return readFileSync(file === '-' ? 0 : file);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? 'unknown';
    throw new CliError(EXIT.notFound, `${file} cannot be read (${code})`, 'name a file, or - for standard input');
  }
}

function consequence({ noted, foundBy }: TakenReport): string {
  const texts: Readonly<Record<NotedReport['kind'], string>> = {
    stopped: '',
    known: 'It was noted before; nothing changes.',
    'resumed since': 'You had mail to this address resumed after that mail was sent; nothing is stopped.',
    noted:
      foundBy === 'message id'
        ? 'It came to no signed address of ours, so that anybody may have written it: nothing is stopped.'
        : 'Nothing is stopped.',
  };
  if (noted.kind !== 'stopped') return texts[noted.kind];
  return `Mail to ${noted.address} is stopped${noted.waiting > 0 ? `; ${noted.waiting} waiting` : ''}. Find out the right address; then "stormpale mail resume ${noted.address}".`;
}

/** Takes a delivery report from a file or standard input: notes it with its mail, and stops mail to an address that is gone. */
export async function runMailBounce(context: CliContext, file: string, options: MailOptions): Promise<void> {
  const raw = bytesOf(file);
  const taken = await withExistingRegister(configOf(context, options), (register) =>
    takeReport(register, raw, { now: context.clock }),
  ).catch((error: unknown) => {
    if (!(error instanceof NoDeliveryReport)) throw error;
    throw new CliError(EXIT.refused, `${file}: ${error.message}`, 'nothing was changed');
  });
  const { outboxId, foundBy, report, noted } = taken;
  const { terminal } = context;
  if (options.json) {
    terminal.out(jsonText({ message: outboxId, foundBy, ...report, noted }));
    return;
  }
  const { action, status, recipient, diagnostic } = report;
  terminal.out(
    `Report on message ${outboxId}, found by its ${foundBy}: ${action} ${status}${recipient ? ` for ${recipient}` : ''}${diagnostic ? `: ${diagnostic}` : ''}\n${consequence(taken)}\n`,
  );
}

/** Lists the addresses that get no mail, and reports of failed deliveries that stopped none. */
export async function runMailStopped(context: CliContext, options: MailOptions): Promise<void> {
  const since = isoUtc(context.clock().minus({ days: SHOWN_DAYS }));
  const [stopped, reports] = await withExistingRegister(configOf(context, options), async (register) => [
    await listStoppedAddresses(register),
    await listUnstoppedReports(register, since),
  ]);
  const { terminal } = context;
  if (options.json) {
    terminal.out(jsonText({ stopped, reports }));
    return;
  }
  if (stopped.length === 0) terminal.out('No address is stopped.\n');
  else {
    const rows = stopped.map((each) => [
      each.address,
      `${each.ownerName} (${each.ownerRef})`,
      each.since.slice(0, 10),
      reasonIn(each),
      String(each.outboxId),
      String(each.waiting),
    ]);
    terminal.out(plainTable(['Address', 'Owner', 'Since', 'Why', 'Message', 'Waiting'], rows, [4, 5]));
    terminal.out(
      'These owners hear nothing from you by mail. Call them; correct the address in the owners list, then: stormpale mail resume ADDRESS\n',
    );
  }
  if (reports.length > 0) {
    terminal.out(`\nReports of the last ${SHOWN_DAYS} days that stopped no address:\n`);
    const rows = reports.map((each) => [
      String(each.outboxId),
      each.envelopeTo,
      each.receivedAt.slice(0, 10),
      each.action,
      reasonIn(each),
      each.foundBy === 'message id' ? 'unsigned' : 'signed',
    ]);
    terminal.out(plainTable(['Message', 'To', 'Day', 'What', 'The server said', 'Report'], rows, [0]));
  }
}

/** Lets mail go to a stopped address again. */
export async function runMailResume(context: CliContext, address: string, options: MailOptions): Promise<void> {
  const waiting = await withExistingRegister(configOf(context, options), (register) =>
    resumeAddress(register, address, isoUtc(context.clock())),
  );
  if (waiting === null) {
    throw new CliError(EXIT.notFound, `${address} is not stopped`, '"stormpale mail stopped" lists those that are');
  }
  const { terminal } = context;
  if (options.json) terminal.out(jsonText({ resumed: address.toLowerCase(), waiting }));
  else {
    const what =
      waiting === 0
        ? 'Nothing waits for it.'
        : `${waiting} waiting ${waiting === 1 ? 'message goes' : 'messages go'} out now; "stormpale mail cancel" takes out what is no longer true.`;
    terminal.out(`Mail to ${address.toLowerCase()} goes again. ${what}\n`);
  }
}
