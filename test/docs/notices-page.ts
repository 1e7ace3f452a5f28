import {
  BOARD_MATTER,
  MATTER_RULES,
  MATTERS,
  type MatterRule,
  OFFICE_MAIL_MATTERS,
  OFFICE_MATTERS,
  type RuledMatter,
  VISIT_MATTERS,
} from '../../src/notify/matter-rules.ts';
import { DEFAULT_SETTINGS } from '../../src/register/settings-store.ts';

/** Where the page lies. */
export const NOTICES_FILE = new URL('../../docs/notices.md', import.meta.url);

const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;

function table(
  matters: readonly RuledMatter[],
  last: readonly [string, (rule: MatterRule, matter: RuledMatter) => string],
): string {
  const [heading, cell] = last;
  const head = ['matter', 'tells that', 'when', 'to', 'once a', 'void where', heading];
  const rows = matters.map((matter) => {
    const rule = MATTER_RULES[matter];
    return [matter, rule.tells, rule.when, rule.to, rule.oncePer, rule.endedBy, cell(rule, matter)];
  });
  return [row(head), row(head.map(() => '---')), ...rows.map(row)].join('\n');
}

/** The page about notices, from the table that the program decides by. */
export function noticesPage(): string {
  const officeOnly = [...OFFICE_MATTERS, ...OFFICE_MAIL_MATTERS].filter(
    (matter) => MATTER_RULES[matter].to === 'office',
  );
  const inList = new Set<string>(OFFICE_MATTERS);
  const held = (rule: MatterRule): string => (rule.mayBeHeld ? 'yes' : 'with the first sweep only');
  return `# Notices

Written by \`npm run notices\` from the table that the program decides by (\`src/notify/matter-rules.ts\`); a test fails where this page is out of date.

A notice is decided by the sweep, in the transaction that stores the forecast which caused it, or in the transaction that changes a visit; once for each enrolled owner of the fence, and never
twice for the same thing. An unchanged fence is silence. Nobody is written to who is not enrolled.

## Matters

The weightiest first: a message with several opens with the first of them. Whatever it is about, a message on a fence with a post that is broken,
leaning or closed off begins with that.

${table(MATTERS, ['may be held', held])}

A **build** is a fence as built, or since the works that last renewed its posts. Seasons are those of the site, on its own calendar.

## Visits and plans

Queued in the transaction that changes the visit: the acceptance of a plan, or the office's confirming, moving, missing or calling off. To the enrolled owners of the
fences on it, with only their fences in it; what an owner is to be told of several visits at the same time is one message, a notice each. What was queued of a visit and has not
left is made void, or its message taken back, when the visit changes again (what that message said of other visits then waits for the next one):
who was to hear of a proposal that is confirmed by then hears of the confirmed day alone. A visit whose day is past is not told.

${table([...VISIT_MATTERS, BOARD_MATTER], ['may be held', held])}

A mail of a visit carries an entry for the calendar (\`text/calendar\`, and the same as a file): asked for, or called off. It has the uid that the calendar feeds give the visit, and its sequence
rises with every change, so that the owner's calendar keeps one entry. A mail of several visits carries one calendar file of all of them in its place, with the same uids, and a link to each on the owner's
pages. Letters carry none.

## For the office

${table(officeOnly, ['where', (_, matter) => (inList.has(matter) ? 'its list and its daily mail' : 'its daily mail')])}

The office finds the matters of its list, and every danger, on the page of the outbox and with \`stormpale mail office\`; \`stormpale mail office --settle NUMBER\` notes one as dealt with.
Once a day, where there is anything that no such mail has named before, the office gets one mail with all of it, at its own address; on other days none.

## Messages

Up to three fences of an owner get a message each; more are told in one digest with a table, the weakest drawn, and the table as a CSV. A fence
that is dangerous now keeps a message of its own beside a digest, up to three of them. The CSV writes \`once_in_years\` as pages do: beyond 1000 years the figure is 1000 and \`once_in_years_is\` says
\`more than\`.

## Holding and releasing

- **A register's first sweep mails nobody.** What it finds waits until the office releases it, and so does later news of the same owners; danger found after it
  goes out at once. Setting \`hold-first-sweep\` (\`${DEFAULT_SETTINGS.holdFirstSweep}\` unless set; the demo sets it to \`no\`, its owners are invented).
- **The first notices of a large import wait too**: of fences new in an import of \`large-import-fences\` (${DEFAULT_SETTINGS.largeImportFences} unless set) or more, into a register that was swept before. Later news of
  such a fence waits until the first is released; danger goes out at once.
- **While first notices of either kind wait, those of new fences wait with them**, however small the import that brought them: corrected rows are part of the first one. A sweep of a
  register without fences is not its first.
- \`stormpale mail held\` lists what waits; the page of the outbox shows it too.
- \`stormpale mail release --all\`, or \`--owner REF\`, \`--matter MATTER\`, or numbers. \`--sentence TEXT\` puts the office's own sentence after the greeting, in place of the usual one.
  Once one of an owner's first notices is released, later news of that owner comes through; those not released stay.
- \`stormpale mail hold --matter MATTER on\` has a matter wait from then on, \`off\` no longer. Danger is never held so.
- A message is written when it is released, from the forecast of that day. What is no longer so by then, or by a sweep before, is made void with the reason, and
  the owner hears how the fence stands instead.
- Reminders come from \`reminder-days\` (${DEFAULT_SETTINGS.reminderDays} unless set) before a season opens; 0 for none.
`;
}
