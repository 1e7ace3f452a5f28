import type { Command } from 'commander';
import { Option } from 'commander';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import type { MailOptions } from './command-mail.ts';
import { runMailBounce, runMailResume, runMailStopped } from './command-mail-delivery.ts';
import { type ProofOptions, runMailProof, runMailVerify } from './command-mail-proof.ts';

const jsonOption = (): Option => new Option('--json', 'print JSON instead of text');

/** Adds to `mail` what became of messages: reports that came back, stopped addresses, and proof. */
export function addDeliveryCommands(mail: Command, context: CliContext, globals: () => GlobalOptions): void {
  mail
    .command('bounce')
    .description('take a delivery report that came back')
    .argument('<file>', 'file of the report, - for standard input')
    .addOption(jsonOption())
    .action((file: string, options: MailOptions) => runMailBounce(context, file, { ...globals(), ...options }));
  mail
    .command('stopped')
    .description('addresses that get no mail because a delivery to them failed for good')
    .addOption(jsonOption())
    .action((options: MailOptions) => runMailStopped(context, { ...globals(), ...options }));
  mail
    .command('resume')
    .description('let mail go to a stopped address again')
    .argument('<address>', 'the address')
    .addOption(jsonOption())
    .action((address: string, options: MailOptions) => runMailResume(context, address, { ...globals(), ...options }));
  mail
    .command('proof')
    .description('write out the exact message that was sent, with its history')
    .argument('<message>', 'its number, or its Message-ID with angle brackets')
    .requiredOption('--out <path>', 'a file that ends in .eml (.html for a letter), or a folder')
    .addOption(jsonOption())
    .action((which: string, options: ProofOptions) => runMailProof(context, which, { ...globals(), ...options }));
  mail
    .command('verify')
    .description('check a message that "mail proof" wrote against its history')
    .argument('<file>', 'the message; its history lies beside it')
    .addOption(jsonOption())
    .action((file: string, options: MailOptions) => runMailVerify(context, file, { ...globals(), ...options }));
}
