import { OWNER_MATTERS } from '../../src/notify/matter-rules.ts';
import { beyondRules, type EnteredWorks, late, untold, visitFaults } from './check-years.ts';
import type { NoticeRecord } from './notice-record.ts';
import type { SeenChange } from './simulate-years.ts';
import type { SeenVisitChange } from './visit-acts.ts';

const row = (cells: readonly (string | number)[]): string => `| ${cells.join(' | ')} |`;
const table = (head: readonly string[], rows: readonly (readonly (string | number)[])[]): string =>
  [row(head), row(head.map(() => '---')), ...rows.map(row)].join('\n');
const sorted = (texts: Iterable<string>): readonly string[] => [...new Set(texts)].sort();
const yearOfNotice = ({ createdAt }: NoticeRecord): string => createdAt.slice(0, 4);

function answers(faults: readonly string[], well: string): string {
  return faults.length === 0
    ? `- ${well}`
    : [`- **Not so:** ${well}`, ...faults.map((fault) => `  - ${fault}`)].join('\n');
}

/** The page about the simulated years. */
export function yearsPage(input: {
  readonly years: number;
  readonly from: string;
  readonly to: string;
  readonly fences: number;
  readonly sweeps: number;
  readonly records: readonly NoticeRecord[];
  readonly seen: readonly SeenChange[];
  readonly entered: EnteredWorks;
  readonly visits: readonly SeenVisitChange[];
  /** How many mails went to the office itself. */
  readonly officeMails: number;
  readonly ownersOf: (fenceRef: string) => readonly string[];
}): string {
  const { records, years } = input;
  const told = records.filter(({ voidReason }) => voidReason === null);
  const calendarYears = sorted(records.map(yearOfNotice));
  const owners = sorted(records.map(({ ownerRef }) => ownerRef));
  const messages = (ownerRef: string, year: string): number =>
    new Set(
      told
        .filter((record) => record.ownerRef === ownerRef && (record.writtenAt ?? '').startsWith(year))
        .map(({ messageId }) => messageId),
    ).size;
  const count = (matter: string, year: string): number =>
    told.filter((record) => record.matter === matter && yearOfNotice(record) === year).length;
  const mostOfOne = (matter: string): number => {
    const counts = new Map<string, number>();
    for (const record of told.filter((each) => each.matter === matter)) {
      const key = JSON.stringify([record.ownerRef, record.fenceRef, yearOfNotice(record)]);
      counts.set(key, (counts.get(key) ?? 0) + 1);
    }
    return Math.max(0, ...counts.values());
  };
  const reasons = sorted(records.flatMap(({ voidReason }) => voidReason ?? []));
  return `# Ten simulated years of notices

Written by \`npm run ten-years\`; a shorter run is part of the tests (\`test/ten-years\`). ${input.fences} fences of the demo, from ${input.from} to ${input.to}: ${input.sweeps}
nights, each with the real sweep over a real SQLite register, the real messages, and the outbox drained over SMTP into the mail catcher, on a clock
of its own. Beside what time does to the fences, the office releases the first sweep after three days, holds reminders for a year, enters one
broken post, has it swapped, and rebuilds a fence. Each spring it makes and accepts a season plan; visits are confirmed, some moved or called off, done or missed, and what was done
enters the register. The rules are those of [notices.md](notices.md).

## What was checked

${answers(beyondRules(records, years, input.entered), `No owner was told more often of a fence than the rule of the matter allows (${told.length} notices).`)}
${answers(untold(input.seen, records, input.ownersOf), `Each of the ${input.seen.length} standings that worsened and marks that were crossed was decided by the sweep that stored it, for every enrolled owner.`)}
${answers(visitFaults(input.visits, records), `Each of the ${input.visits.length} times that a visit was proposed, confirmed or moved was queued by the transaction that did it, for its owners, and none twice.`)}
${answers(late(records, `${input.to}T23:59:59Z`), 'Every notice was sent (a letter: written) within a day, or held by a rule that is named and sent within a day of its release, or made void with a reason.')}

## Messages to each owner

${table(
  ['owner', ...calendarYears],
  owners.map((ownerRef) => [ownerRef, ...calendarYears.map((year) => messages(ownerRef, year))]),
)}

## Notices of each matter

The last column: most to one owner about one fence in one calendar year.

${table(
  ['matter', ...calendarYears, 'most'],
  OWNER_MATTERS.map((matter) => [matter, ...calendarYears.map((year) => count(matter, year)), mostOfOne(matter)]),
)}

## Held and void

- Held with the first sweep: ${records.filter(({ held }) => held === 'first sweep').length}; held because the office held the matter: ${records.filter(({ held }) => held === 'matter').length}; with a large import: ${records.filter(({ held }) => held === 'large import').length}; never released: ${told.filter(({ held, releasedAt }) => held !== null && releasedAt === null).length}.
- Mails to the office itself, at most one a day and only where something was new: ${input.officeMails}.
${reasons.map((reason) => `- Void, "${reason}": ${records.filter(({ voidReason }) => voidReason === reason).length}.`).join('\n')}
`;
}
