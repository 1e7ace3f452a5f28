import {
  MATTER_RULES,
  MATTERS,
  MATTERS_TO_COME,
  type MatterRule,
  OFFICE_MATTERS,
  type RuledMatter,
} from '../../src/notify/matter-rules.ts';
import { DEFAULT_SETTINGS } from '../../src/register/settings-store.ts';

/** Where the page lies. */
export const NOTICES_FILE = new URL('../../docs/notices.md', import.meta.url);

const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;

function table(matters: readonly RuledMatter[], last: readonly [string, (rule: MatterRule) => string]): string {
  const [heading, cell] = last;
  const head = ['matter', 'tells that', 'when', 'to', 'once a', 'void where', heading];
  const rows = matters.map((matter) => {
    const rule = MATTER_RULES[matter];
    return [matter, rule.tells, rule.when, rule.to, rule.oncePer, rule.endedBy, cell(rule)];
  });
  return [row(head), row(head.map(() => '---')), ...rows.map(row)].join('\n');
}

/** The page about notices, from the table that the program decides by. */
export function noticesPage(): string {
  const officeOnly = OFFICE_MATTERS.filter((matter) => MATTER_RULES[matter].to === 'office');
  return `# Notices

Written by \`npm run notices\` from the table that the program decides by (\`src/notify/matter-rules.ts\`); a test fails where this page is out of date.

A notice is decided by the sweep, in the transaction that stores the forecast which caused it, once for each enrolled owner of the fence, and never
twice for the same thing. An unchanged fence is silence. Nobody is written to who is not enrolled.

## Matters

The weightiest first: a message with several opens with the first of them. Whatever it is about, a message on a fence with a post that is broken,
leaning or closed off begins with that.

${table(MATTERS, ['may be held', (rule) => (rule.mayBeHeld ? 'yes' : 'with the first sweep only')])}

A **build** is a fence as built, or since the works that last renewed its posts. Seasons are those of the site, on its own calendar.

## For the office

${table(officeOnly, ['mailed', () => 'no: it is in the list'])}

The office finds these, and every danger, on the page of the outbox and with \`stormpale mail office\`; \`stormpale mail office --settle NUMBER\` notes one as dealt with.

## Not told yet

Laid down, and not decided by any part of the program so far.

${table(MATTERS_TO_COME, ['may be held', (rule) => (rule.mayBeHeld ? 'yes' : 'no')])}

## Messages

Up to three fences of an owner get a message each; more are told in one digest with a table, the weakest drawn, and the table as a CSV. A fence
that is dangerous now keeps a message of its own beside a digest, up to three of them. The CSV writes \`once_in_years\` as pages do: beyond 1000 years the figure is 1000 and \`once_in_years_is\` says
\`more than\`.

## Holding and releasing

- **A register's first sweep mails nobody.** What it finds waits until the office releases it, and so does later news of the same owners; danger found after it
  goes out at once. Setting \`hold-first-sweep\` (\`${DEFAULT_SETTINGS.holdFirstSweep}\` unless set; the demo sets it to \`no\`, its owners are invented).
- \`stormpale mail held\` lists what waits; the page of the outbox shows it too.
- \`stormpale mail release --all\`, or \`--owner REF\`, \`--matter MATTER\`, or numbers. \`--sentence TEXT\` puts the office's own sentence after the greeting, in place of the usual one.
  Once one of an owner's first notices is released, later news of that owner comes through; those not released stay.
- \`stormpale mail hold --matter MATTER on\` has a matter wait from then on, \`off\` no longer. Danger is never held so.
- A message is written when it is released, from the forecast of that day. What is no longer so by then, or by a sweep before, is made void with the reason, and
  the owner hears how the fence stands instead.
- Reminders come from \`reminder-days\` (${DEFAULT_SETTINGS.reminderDays} unless set) before a season opens; 0 for none.
`;
}
