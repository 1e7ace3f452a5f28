import type { Command } from 'commander';
import { Option } from 'commander';
import { NO_MONEY } from '../season/money/money.ts';
import { USUAL_TERMS } from '../service/usual-terms.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import type { MoneyOptions } from './command-money.ts';
import { runMoney } from './command-money.ts';
import type { QuoteOptions } from './command-quote.ts';
import { runQuote, runQuoteWithdraw } from './command-quote.ts';
import { amountArgument, currencyArgument, numberArgument, postsArgument } from './money-argument.ts';

const MOST_PERCENT = 30;
const jsonOption = (): Option => new Option('--json', 'print JSON instead of text');

/** Adds the commands about what fences cost whom, and when. */
export function addMoneyCommands(root: Command, context: CliContext, globals: () => GlobalOptions): void {
  root
    .command('money')
    .description('plan what one owner spends on fences year by year, and what to set aside for it')
    .argument('<owner>', 'ref of the owner')
    .option('--years <count>', 'years to plan, 10 to 30', numberArgument(10, 30, 'whole number'), USUAL_TERMS.years)
    .option('--opening <amount>', 'what the fund holds today', amountArgument('any'), NO_MONEY)
    .option('--yearly <amount>', 'what is paid in every year (else the plan finds it)', amountArgument('from 0'))
    .option('--at-once <amount>', 'what is paid in once in the first year beside --yearly', amountArgument('from 0'))
    .option('--rising', 'what is paid in rises with prices instead of staying the same')
    .addOption(
      new Option('--cover <what>', 'what the plan finds the yearly amount for')
        .choices(['expected', 'nine-in-ten'])
        .default('expected'),
    )
    .option(
      '--inflation <percent>',
      'rise of prices a year',
      numberArgument(-MOST_PERCENT, MOST_PERCENT, 'number'),
      USUAL_TERMS.inflationPercent,
    )
    .option(
      '--interest <percent>',
      'what the fund earns a year',
      numberArgument(0, MOST_PERCENT, 'number'),
      USUAL_TERMS.interestPercent,
    )
    .option('--floor <amount>', 'what the fund never falls below', amountArgument('from 0'), NO_MONEY)
    .addOption(
      new Option('--replace <when>', 'when the plan replaces a fence')
        .choices(['cheapest', 'before-short'])
        .default('cheapest'),
    )
    .option(
      '--life <years>',
      'age at which rails and boards are worn out',
      numberArgument(1, 30, 'whole number'),
      USUAL_TERMS.longestServiceYears,
    )
    .option(
      '--inspect-every <years>',
      'years from one inspection to the next; 0 for none',
      numberArgument(0, 30, 'whole number'),
      USUAL_TERMS.inspectEveryYears,
    )
    .option('--together', 'all fences go early or all late together, instead of each by itself')
    .option(
      '--shared-part <percent>',
      'what this owner pays of a fence with two owners',
      numberArgument(0, 100, 'number'),
      USUAL_TERMS.sharedPercent,
    )
    .option('--currency <code>', "currency of the amounts (else the register's)", currencyArgument)
    .option('--csv <folder>', 'write years and fences as CSV there, or the years to standard output with -')
    .addOption(jsonOption())
    .action((ref: string, options: MoneyOptions) => runMoney(context, ref, { ...globals(), ...options }));
  root
    .command('quote')
    .description('draw up a quote for works at one fence')
    .argument('<fence>', 'ref of the fence')
    .argument('<works...>', 'inspect or kinds of works, with posts of their own where wanted: post-swap:3,4,7')
    .option(
      '--posts <numbers>',
      'posts of works that name none, as 3,4,7 or 3-5,7 (else every post where it makes sense)',
      postsArgument,
    )
    .option('--tax <percent>', 'tax on the sum', numberArgument(0, 100, 'number'), 0)
    .option('--valid-days <days>', 'days for which it may be accepted', numberArgument(0, 365, 'whole number'), 30)
    .option('--currency <code>', "currency of the amounts (else the register's)", currencyArgument)
    .option('--csv <file>', 'write its lines as CSV, - for standard output')
    .option('--out <file>', 'write the text into a file, - for standard output')
    .option('--offer', 'let the owners of the fence accept it by their links')
    .addOption(jsonOption())
    .action((ref: string, works: string[], options: QuoteOptions) =>
      runQuote(context, ref, works, { ...globals(), ...options }),
    );
  root
    .command('quote-withdraw')
    .description('take back a quote that owners were offered')
    .argument('<number>', 'number of the quote')
    .action((number: string) => runQuoteWithdraw(context, number, globals()));
}
