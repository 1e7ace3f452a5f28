import type { InspectionRecord } from './inspection-record.ts';
import type { ReadingRecord } from './reading-record.ts';
import { type RegisterDb, readingsOfFences, recordsWhereIn } from './record-store.ts';
import type { StormOutcomeRecord } from './storm-outcome-record.ts';

/** An inspection with what it found, in the order of the posts. */
export interface InspectionWithReadings {
  readonly record: InspectionRecord;
  readonly readings: readonly ReadingRecord[];
}

/** What has been seen of one fence: inspections and storm outcomes, each by day, then by ref byte by byte. */
export interface FenceEvidence {
  readonly inspections: readonly InspectionWithReadings[];
  readonly outcomes: readonly StormOutcomeRecord[];
}

const inDayOrder = <R extends { readonly day: string; readonly ref: string }>(records: readonly R[]): readonly R[] =>
  [...records].sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.ref < b.ref ? -1 : a.ref > b.ref ? 1 : 0));

function group<R>(records: readonly R[], keyOf: (record: R) => string): ReadonlyMap<string, R[]> {
  const groups = new Map<string, R[]>();
  for (const record of records) {
    const known = groups.get(keyOf(record));
    if (known) known.push(record);
    else groups.set(keyOf(record), [record]);
  }
  return groups;
}

/** What has been seen of each of the fences (at most some 10,000), in three queries; fences of which nothing was are left out. */
export async function loadFenceEvidence(
  db: RegisterDb,
  fenceRefs: readonly string[],
): Promise<ReadonlyMap<string, FenceEvidence>> {
  const inspections = await recordsWhereIn(db, 'inspections', 'fence_ref', fenceRefs);
  const readings = inspections.length === 0 ? [] : await readingsOfFences(db, fenceRefs);
  const outcomes = await recordsWhereIn(db, 'outcomes', 'fence_ref', fenceRefs);
  const ofInspection = group(readings, ({ inspectionRef }) => inspectionRef);
  const inspectionsOf = group(inDayOrder(inspections), ({ fenceRef }) => fenceRef);
  const outcomesOf = group(inDayOrder(outcomes), ({ fenceRef }) => fenceRef);
  return new Map(
    [...new Set([...inspectionsOf.keys(), ...outcomesOf.keys()])].map((fenceRef) => [
      fenceRef,
      {
        inspections: (inspectionsOf.get(fenceRef) ?? []).map((record) => ({
          record,
          readings: ofInspection.get(record.ref) ?? [],
        })),
        outcomes: outcomesOf.get(fenceRef) ?? [],
      },
    ]),
  );
}
