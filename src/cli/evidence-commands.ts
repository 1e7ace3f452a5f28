import type { Command } from 'commander';
import { Option } from 'commander';
import { INSPECTION_METHODS } from '../forecast/evidence/inspection.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { type EvidenceListOptions, runInspectList, runStormList } from './command-evidence-list.ts';
import type { InspectOptions } from './command-inspect.ts';
import { runInspect } from './command-inspect.ts';
import type { StormOptions } from './command-storm.ts';
import { runStorm } from './command-storm.ts';
import { runInspectWithdraw, runStormWithdraw, type WithdrawOptions } from './command-withdraw.ts';

const collect = (text: string, earlier: readonly string[] = []): readonly string[] => [...earlier, text];

const READING_HELP = `
What --post says: the number of the post, then any of
  depth 6mm           rot on each face            broken          broken at the groundline
  width 3.1in         sound width left            lean 4          degrees out of plumb
  circumference 11in  sound girth left            rail 0.5        weakest rail connection, share of a sound one
  sound-to 3mm        no rot down to there        cut 1/4in       trimmer cut into one face
  soft-to 12mm        soft at least to there      collar-cracked, collar-sound, closed-off
  cavity 1in          hollow in the heart         note …          the rest of the text
Lengths are in mm, cm or in, fractions of an inch too: 0.25in, 1/4in, 1 1/2in. Depth lost and width left are never taken for one another. A method takes what it can measure: awl-or-probe a depth, sound-to or soft-to;
caliper a width; circumference-tape a circumference; drill-resistance a depth, sound-to, soft-to and a cavity; level and eye none of these.`;

const jsonOption = (): Option => new Option('--json', 'print JSON instead of text');
const SURE = 'take what is to be confirmed as it is';

/** Adds the commands that enter, list and take back what was seen of a fence. */
export function addEvidenceCommands(root: Command, context: CliContext, globals: () => GlobalOptions): void {
  addInspect(root, context, globals);
  addStorm(root, context, globals);
}

/** What `withdraw` takes, for an inspection as for a storm outcome. */
const withdrawCommand = (parent: Command, what: string): Command =>
  parent
    .command('withdraw')
    .description(`take ${what} back: forecasts no longer rest on it, and what it said is kept with the reason`)
    .argument('<ref>', `ref of ${what}`)
    .requiredOption('--because <text>', 'why it is taken back')
    .option('--by <name>', 'who takes it back')
    .addOption(jsonOption());

/** The command that enters is the one meant where no other is named: its help is shown with that of its parent. */
const withItsHelp = (parent: Command, enter: Command, more = ''): void =>
  void parent.addHelpText('after', () => `\nWithout one of these, it enters:\n${enter.helpInformation()}${more}`);

function addInspect(root: Command, context: CliContext, globals: () => GlobalOptions): void {
  const inspect = root.command('inspect').description('enter an inspection of a fence, list them, or take one back');
  const enter = inspect
    .command('enter', { isDefault: true })
    .description('enter an inspection of a fence and what it found at its posts')
    .argument('<fence>', 'ref of the fence')
    .requiredOption('--day <day>', 'day of the inspection, as 2026-10-02')
    .requiredOption('--inspector <name>', 'who looked')
    .addOption(
      new Option('--method <method>', 'how the posts were looked at').choices(INSPECTION_METHODS).makeOptionMandatory(),
    )
    .addOption(
      new Option('--post <reading>', 'what was found at one post, as "3 depth 6mm"; once for each post')
        .argParser(collect)
        .makeOptionMandatory(),
    )
    .option('--qualification <text>', 'what the inspector is')
    .option('--instrument <text>', 'what was measured with')
    .option('--notes <text>', 'anything else')
    .option('--ref <ref>', 'ref of the inspection (else FENCE/DAY/METHOD)')
    .option('--sure', `${SURE}: readings that leave less than a quarter of a post`)
    .option('--dry-run', 'only say what would be stored and what it would mean')
    .addOption(jsonOption())
    .addHelpText('after', READING_HELP)
    .action((fence: string, options: InspectOptions) => runInspect(context, fence, { ...globals(), ...options }));
  inspect
    .command('list')
    .description('every reading of a fence with its day, post by post, and what was withdrawn')
    .argument('<fence>', 'ref of the fence')
    .addOption(jsonOption())
    .action((fence: string, options: EvidenceListOptions) =>
      runInspectList(context, fence, { ...globals(), ...options }),
    );
  withdrawCommand(inspect, 'an inspection').action((ref: string, options: WithdrawOptions) =>
    runInspectWithdraw(context, ref, { ...globals(), ...options }),
  );
  withItsHelp(inspect, enter, READING_HELP);
}

function addStorm(root: Command, context: CliContext, globals: () => GlobalOptions): void {
  const storm = root
    .command('storm')
    .description('enter what a storm was reported to have done to a fence, list it, or take it back');
  const enter = storm
    .command('enter', { isDefault: true })
    .description('enter what a storm was reported to have done to the posts of a fence')
    .argument('<fence>', 'ref of the fence')
    .requiredOption('--day <day>', 'day of the storm, as 2026-03-14')
    .requiredOption('--gust <gust>', 'largest 3-second gust near the fence in open terrain, as 71mph or 32m/s')
    .requiredOption('--name <name>', 'name of the storm: outcomes of one fence under one name share its wind')
    .requiredOption('--reported-by <name>', 'who reported it')
    .option('--stood <posts>', 'all (that are not named otherwise), or numbers, as 1,2 or 2-5')
    .option('--leaned <posts>', 'posts that lean by more than 15 degrees or refuse to stand plumb')
    .option('--snapped <posts>', 'posts that broke')
    .option('--unseen <posts>', 'posts that nobody looked at: all does not cover them')
    .option('--gust-spread <percent>', 'how well the gust is known (else 10%, as measured near the fence)')
    .option('--gust-source <text>', 'where the gust comes from')
    .option('--notes <text>', 'anything else')
    .option('--ref <ref>', 'beginning of the refs of the outcomes (else FENCE/DAY/NAME)')
    .option('--sure', `${SURE}: posts that stood, though an inspection found them broken later`)
    .option('--dry-run', 'only say what would be stored and what it would mean')
    .addOption(jsonOption())
    .action((fence: string, options: StormOptions) => runStorm(context, fence, { ...globals(), ...options }));
  storm
    .command('list')
    .description('every storm outcome of a fence, and what was withdrawn')
    .argument('<fence>', 'ref of the fence')
    .addOption(jsonOption())
    .action((fence: string, options: EvidenceListOptions) =>
      runStormList(context, fence, { ...globals(), ...options }),
    );
  withdrawCommand(storm, 'a storm outcome')
    .option('--sure', `${SURE}: another outcome then speaks of its posts`)
    .action((ref: string, options: WithdrawOptions) => runStormWithdraw(context, ref, { ...globals(), ...options }));
  withItsHelp(storm, enter);
}
