import type { FenceFacts } from '../forecast/fence-facts.ts';
import { fenceStates } from '../forecast/fence-state.ts';
import { refuseEarlyDay, refuseOutcome, refuseReading } from './evidence-agreement.ts';
import { loadFenceEvidence } from './evidence-store.ts';
import { refuseWorks } from './record-agreement.ts';
import { type RegisterDb, readRecord, recordsWhereIn, upsertRecords } from './record-store.ts';
import type { Refuse } from './value-schemas.ts';
import { type WorksRecord, worksFacts, worksSchema } from './works-record.ts';

/** Why works do not fit their own rules, as an import would say it. */
function ownFaults(works: WorksRecord): readonly string[] {
  const parsed = worksSchema.safeParse(works);
  return parsed.success
    ? []
    : parsed.error.issues.map(({ path, message }) => `${works.kind}, ${path.join('.')}: ${message}`);
}

/**
 * Enters works done at one fence, by the checks of an import: their own rules, the fence on that day with all that was done
 * to it, and the inspections and storm outcomes in the register. Works within a transaction of the caller. Returns why they
 * are refused, and then stores nothing; an empty list where they are stored.
 * @param facts the fence without these works
 * @param now moment of writing, ISO 8601
 */
export async function enterWorks(
  tx: RegisterDb,
  facts: FenceFacts,
  records: readonly WorksRecord[],
  now: string,
): Promise<readonly string[]> {
  const fence = await readRecord(tx, 'fences', facts.ref);
  if (!fence) return [`fence ${facts.ref} is not in the register`];
  const faults: string[] = records.flatMap(ownFaults);
  const own = new Set(records.map(({ ref }) => ref));
  const stored = await recordsWhereIn(tx, 'works', 'fence_ref', [fence.ref]);
  const taken = stored.find(({ ref }) => own.has(ref)) ?? (await recordsWhereIn(tx, 'works', 'ref', [...own]))[0];
  if (taken) faults.push(`works ${taken.ref} are in the register already`);
  refuseWorks([...stored, ...records], fence, (each) =>
    own.has(each.ref) ? (key, reason) => faults.push(`${each.kind}, ${key}: ${reason}`) : null,
  );
  if (faults.length > 0) return faults;
  // what works alone make of it: evidence is judged against that, and may not fit
  const works = [...facts.works, ...records.map(worksFacts)];
  const states = fenceStates({ ...facts, works, inspections: [], outcomes: [] });
  const unfit =
    (what: string): Refuse =>
    (_key, reason) =>
      faults.push(`does not fit ${what} in the register: ${reason}`);
  const seen = (await loadFenceEvidence(tx, [fence.ref])).get(fence.ref);
  for (const { record, readings } of seen?.inspections ?? []) {
    refuseEarlyDay(record.day, fence, unfit(`inspection ${record.ref}`));
    for (const reading of readings) {
      refuseReading(reading, record, states, unfit(`the reading of post ${reading.post} in inspection ${record.ref}`));
    }
  }
  for (const outcome of seen?.outcomes ?? []) refuseOutcome(outcome, states, unfit(`storm outcome ${outcome.ref}`));
  if (faults.length === 0) await upsertRecords(tx, 'works', records, now);
  return faults;
}
