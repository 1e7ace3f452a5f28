import { DateTime } from 'luxon';
import type { FenceStanding } from '../../src/forecast/fence-forecast.ts';
import { isWorse } from '../../src/forecast/standing.ts';
import type { Register } from '../../src/register/database.ts';
import { writeSettings } from '../../src/register/settings-store.ts';
import { isoUtc } from '../../src/service/clock.ts';
import { drainOutbox } from '../../src/service/drain-outbox.ts';
import { importDemo } from '../../src/service/import-demo.ts';
import { startMailCatcher } from '../../src/service/mail-catcher.ts';
import { mailServerAddress, smtpTransport } from '../../src/service/mail-transport.ts';
import { sweepRegister } from '../../src/service/sweep-register.ts';
import { OFFICE_ACTS } from './office-acts.ts';
import { actOnVisits } from './visit-acts.ts';

/** The first night: the demo has just been imported. */
export const FIRST_NIGHT = DateTime.fromISO('2026-11-26T10:30:00Z', { zone: 'utc' });
const OFFICE = {
  officeName: 'Ten Years',
  officePhone: null,
  officeEmail: 'office@example.org',
  mailFrom: null,
  smtpUrl: null,
  publicUrl: 'https://ten-years.example.org',
};

/** A standing that worsened or a mark that was crossed, and the sweep that stored it. */
export interface SeenChange {
  readonly fenceRef: string;
  readonly matter: string;
  readonly sweepId: number;
}

interface StoredStanding {
  readonly standing: FenceStanding;
  readonly endsStanding: FenceStanding | null;
  readonly marks: readonly string[];
  readonly sweepId: number;
}

async function storedStandings({ db }: Register): Promise<ReadonlyMap<string, StoredStanding>> {
  const rows = await db
    .selectFrom('forecasts')
    .select(['fence_ref', 'standing', 'ends_standing', 'told_marks', 'sweep_id'])
    .execute();
  return new Map(
    rows.map((row) => [
      row.fence_ref,
      {
        standing: row.standing,
        endsStanding: row.ends_standing,
        marks: JSON.parse(row.told_marks) as readonly string[],
        sweepId: row.sweep_id,
      },
    ]),
  );
}

const isShort = (standing: FenceStanding | null | undefined): boolean =>
  standing === 'short' || standing === 'short from new';

/** What changed for the worse at a fence between two nights, by what the register stores and not by what it told. */
function changesOf(fenceRef: string, before: StoredStanding, after: StoredStanding): readonly SeenChange[] {
  const { sweepId } = after;
  return [
    ...(isWorse(after.standing, before.standing) ? [after.standing] : []),
    ...(isShort(after.endsStanding) && !isShort(before.endsStanding) ? ['ends short'] : []),
    ...after.marks.filter((mark) => !before.marks.includes(mark)),
  ].map((matter) => ({ fenceRef, matter, sweepId }));
}

/**
 * Lives through years of nights over the demo: a sweep each night, then the outbox into the mail catcher, with a clock of its
 * own. Whatever is in the register when it begins stays; the demo is imported where it is empty.
 * @param years how long [a]
 * @param owners whose fences are kept; all where left out
 */
export async function simulateYears(
  register: Register,
  options: {
    readonly years: number;
    readonly mailFolder: string;
    readonly owners?: readonly string[];
    readonly onYear?: (year: number) => void;
  },
): Promise<readonly SeenChange[]> {
  let now = FIRST_NIGHT;
  const clock = (): DateTime => now;
  await importDemo(register, { now: clock, onProgress: () => undefined });
  await writeSettings(register.db, { holdFirstSweep: 'yes' }, isoUtc(now));
  if (options.owners) await register.db.deleteFrom('fences').where('owner_ref', 'not in', options.owners).execute();
  const catcher = await startMailCatcher({ port: 0, folder: options.mailFolder, now: clock });
  const transport = smtpTransport(mailServerAddress(`smtp://127.0.0.1:${catcher.port}`));
  const seen: SeenChange[] = [];
  try {
    for (let day = 0; day < options.years * 365.25; day += 1) {
      now = FIRST_NIGHT.plus({ days: day });
      for (const { act } of OFFICE_ACTS.filter((each) => each.day === day))
        await act(register, now.minus({ hours: 14 }));
      const noon = now.minus({ hours: 14 });
      await actOnVisits(register, noon, noon.toISODate() ?? '');
      const before = await storedStandings(register);
      const { report, composed } = await sweepRegister(register, { now: clock, sender: OFFICE });
      if (report.kind !== 'finished' || report.failures.length + (composed?.failures.length ?? 0) > 0) {
        throw new Error(`the night of ${now.toISODate()} failed: ${JSON.stringify({ report, composed })}`);
      }
      for (const [ref, after] of await storedStandings(register)) {
        const earlier = before.get(ref);
        if (earlier && earlier.sweepId !== after.sweepId) seen.push(...changesOf(ref, earlier, after));
      }
      now = now.plus({ minutes: 5 });
      await drainOutbox(register, { now: clock, transport });
      if (day % 365 === 364) options.onYear?.(Math.floor(day / 365) + 1);
    }
  } finally {
    await catcher.close();
  }
  return seen;
}
