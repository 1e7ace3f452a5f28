import type { InspectionMethod } from '../forecast/evidence/inspection.ts';
import { writeCsv } from '../register/csv/csv-text.ts';
import { importCsv } from '../register/csv/import-csv.ts';
import { guardText } from '../register/csv/text-cell.ts';
import type { Register } from '../register/database.ts';
import { loadFenceEvidence } from '../register/evidence-store.ts';
import type { ReadingRecord } from '../register/reading-record.ts';
import { readRecord } from '../register/record-store.ts';
import { removeReading } from '../register/remove-reading.ts';
import { readSettings } from '../register/settings-store.ts';
import type { SiteRecord } from '../register/site-record.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import { dayAtSite } from './change-visit.ts';
import { type Clock, dayInZone, isoUtc } from './clock.ts';
import { type VisitingAccount, type VisitRefusal, visitInspectionRef, visitToEnterOn } from './crew-visit.ts';
import { type EntryOutcome, enterOnce, type SentEntry } from './enter-once.ts';

/** What was found at a post, by the columns of `readings.csv`: numbers as they were typed, in the unit of the column. */
export type ReadingCells = Readonly<Record<string, string>>;

/** A reading that a crew enters on a visit. */
export interface VisitReading {
  /** Id that the phone made. */
  readonly entryId: string;
  readonly uid: string;
  readonly fenceRef: string;
  readonly post: number;
  /** Null: as the inspection of this fence goes already, else by eye. */
  readonly method: InspectionMethod | null;
  /** The day on which it was seen by the phone's clock; null, or one to come: today, at the site. */
  readonly day: CalendarDay | null;
  /** What was found, read with the units of the site; columns that are not here keep what they hold. */
  readonly cells: (units: SiteRecord['units']) => ReadingCells;
  /** Takes what is to be confirmed as it is. */
  readonly sure: boolean;
  readonly account: VisitingAccount;
  /** All of it as it was sent, letter by letter: by this an entry that comes again is known for the same. */
  readonly sent: unknown;
}

/** One thing against a reading. */
interface ReadingFault {
  /** Column of the file that it would be read from; empty for the whole reading. */
  readonly column: string;
  readonly value: string;
  readonly reason: string;
  /** True where it is taken once it is confirmed. */
  readonly question: boolean;
}

/** Why a reading is refused. */
export type ReadingRefusal = VisitRefusal | { readonly kind: 'faults'; readonly faults: readonly ReadingFault[] };

/** What a reading came to, and what is doubtful of it. */
export interface ReadingAnswer {
  readonly inspectionRef: string;
  readonly post: number;
  readonly doubts: readonly string[];
}

const row = (cells: Readonly<Record<string, string>>): string => writeCsv([Object.keys(cells), Object.values(cells)]);

const entryFor = (
  kind: string,
  { entryId, account, sent, uid, fenceRef, post }: Omit<VisitReading, 'cells' | 'method' | 'day' | 'sure'>,
): SentEntry => ({ holder: `account:${account.id}`, id: entryId, kind, content: { uid, fenceRef, post, sent } });

/** What a visit has entered of a fence so far; null where nothing was. */
export async function visitInspection(
  { db }: Pick<Register, 'db'>,
  uid: string,
  fenceRef: string,
): Promise<{ readonly method: InspectionMethod; readonly readings: readonly ReadingRecord[] } | null> {
  const ref = visitInspectionRef(uid, fenceRef);
  const evidence = (await loadFenceEvidence(db, [fenceRef])).get(fenceRef);
  const found = evidence?.inspections.find(({ record }) => record.ref === ref);
  return found ? { method: found.record.method, readings: found.readings } : null;
}

async function faultsOrAnswer(
  register: Register,
  reading: VisitReading,
  siteRef: string,
  now: Clock,
): Promise<{ readonly answer: ReadingAnswer } | { readonly refused: ReadingRefusal }> {
  const { uid, fenceRef, post } = reading;
  const ref = visitInspectionRef(uid, fenceRef);
  const known = await readRecord(register.db, 'inspections', ref);
  if (known && known.fenceRef !== fenceRef) {
    const reason = `inspection ${ref} is one of fence ${known.fenceRef}; give that one another ref by an import`;
    return { refused: { kind: 'faults', faults: [{ column: '', value: ref, reason, question: false }] } };
  }
  const site = await readRecord(register.db, 'sites', siteRef);
  const cells = reading.cells(site?.units ?? 'us');
  const atSite = await dayAtSite(register, siteRef, now);
  const { timeZone } = await readSettings(register.db);
  const atOffice = dayInZone(now(), timeZone);
  const sure = reading.sure ? { sure: 'yes' } : {};
  const inspection = {
    ref,
    fence: fenceRef,
    // what was begun goes on under its first day and by whoever began it
    day: known?.day ?? (reading.day === null || reading.day > atSite ? atSite : reading.day),
    inspector: guardText(known?.inspector ?? reading.account.displayName),
    method: reading.method ?? known?.method ?? 'eye',
  };
  const report = await importCsv(
    register,
    [
      { name: 'inspections.csv', text: row(inspection) },
      { name: 'readings.csv', text: row({ inspection: ref, post: String(post), ...cells, ...sure }) },
    ],
    {
      acceptValid: false,
      dryRun: false,
      // the day may have begun at the site and not yet at the office
      today: atSite > atOffice ? atSite : atOffice,
      now: isoUtc(now()),
      questions: reading.sure ? 'warn' : 'refuse',
      evidenceOf: [fenceRef],
    },
  );
  if (report.faults.length > 0) {
    const faults = report.faults
      // that the reading has no inspection says nothing new where the inspection itself was refused
      .filter(({ file }, _, all) => file === 'inspections.csv' || all.every((each) => each.file === 'readings.csv'))
      .map(({ column, value, reason, question }) => ({ column, value, reason, question: question === true }));
    return { refused: { kind: 'faults', faults } };
  }
  return { answer: { inspectionRef: ref, post, doubts: report.warnings.map(({ reason }) => reason) } };
}

/**
 * Enters what a crew found at one post, once: by the same records and checks as an import. Readings of a visit at a fence make
 * up one inspection, by one method; a reading of a post that has one takes its place.
 */
export const enterVisitReading = (
  register: Register,
  reading: VisitReading,
  now: Clock,
): Promise<EntryOutcome<ReadingAnswer, ReadingRefusal>> => {
  const { account } = reading;
  const entry = entryFor('reading', reading);
  return enterOnce<ReadingAnswer, ReadingRefusal>(register, entry, now, async (inTx) => {
    const found = await visitToEnterOn(inTx.db, reading, account);
    if ('refused' in found) return found;
    return faultsOrAnswer(inTx, reading, found.visit.siteRef, now);
  });
};

/** Takes back what this visit entered of one post, once: the reading leaves the register. */
export const takeBackReading = (
  register: Register,
  wanted: Pick<VisitReading, 'entryId' | 'uid' | 'fenceRef' | 'post' | 'account' | 'sent'>,
  now: Clock,
): Promise<EntryOutcome<ReadingAnswer, ReadingRefusal>> => {
  const { account } = wanted;
  const entry = entryFor('reading taken back', wanted);
  return enterOnce<ReadingAnswer, ReadingRefusal>(register, entry, now, async (inTx) => {
    const found = await visitToEnterOn(inTx.db, wanted, account);
    if ('refused' in found) return found;
    const inspectionRef = visitInspectionRef(wanted.uid, wanted.fenceRef);
    // what is gone already is as it was wanted
    await removeReading(inTx.db, inspectionRef, wanted.post);
    return { answer: { inspectionRef, post: wanted.post, doubts: [] } };
  });
};

/**
 * Notes at once that a post is dangerous and closed off, or that it is not after all, once. Where nothing else was found at the
 * post, the second takes the reading back.
 */
export const enterClosedOff = (
  register: Register,
  wanted: Omit<VisitReading, 'cells' | 'sure' | 'method'> & { readonly closedOff: boolean },
  now: Clock,
): Promise<EntryOutcome<ReadingAnswer, ReadingRefusal>> => {
  const { account } = wanted;
  const entry = entryFor('closed off', wanted);
  return enterOnce<ReadingAnswer, ReadingRefusal>(register, entry, now, async (inTx) => {
    const found = await visitToEnterOn(inTx.db, wanted, account);
    if ('refused' in found) return found;
    const { uid, fenceRef, post, closedOff } = wanted;
    const known = (await visitInspection(inTx, uid, fenceRef))?.readings.find((reading) => reading.post === post);
    if (!closedOff && (!known || saysNothingElse(known))) {
      const inspectionRef = visitInspectionRef(uid, fenceRef);
      await removeReading(inTx.db, inspectionRef, post);
      return { answer: { inspectionRef, post, doubts: [] } };
    }
    const reading = { ...wanted, method: null, cells: () => ({ closed_off: closedOff ? 'yes' : 'no' }), sure: true };
    return faultsOrAnswer(inTx, reading, found.visit.siteRef, now);
  });
};

const saysNothingElse = (reading: ReadingRecord): boolean =>
  [
    reading.groundlineKind,
    reading.cavityMm,
    reading.leanDegrees,
    reading.collarCracked,
    reading.railConnection,
    reading.trimmerCutMm,
  ].every((found) => found === null) && reading.notes === '';
