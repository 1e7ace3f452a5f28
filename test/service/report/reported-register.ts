import type { Register } from '../../../src/register/database.ts';
import type { InspectionRecord } from '../../../src/register/inspection-record.ts';
import type { ReadingRecord } from '../../../src/register/reading-record.ts';
import { upsertRecords } from '../../../src/register/record-store.ts';
import type { StormOutcomeRecord } from '../../../src/register/storm-outcome-record.ts';
import type { WorksRecord } from '../../../src/register/works-record.ts';
import { worksSchema } from '../../../src/register/works-record.ts';

/** Records about a fence, as they came into a register. */
export interface SeenRecords {
  readonly inspections: readonly InspectionRecord[];
  readonly readings: readonly ReadingRecord[];
  readonly outcomes: readonly StormOutcomeRecord[];
  readonly works: readonly WorksRecord[];
}

/** An inspection of a fence of the sample. */
export const inspectionOn = (fenceRef: string, day: string, ref = `I-${fenceRef}-${day}`): InspectionRecord => ({
  ref,
  fenceRef,
  day,
  inspector: 'Maria Ortega-Featherstonehaugh of the Gulf Coast Inspection Cooperative',
  qualification: 'licensed wood inspector, No. 4711',
  method: 'drill-resistance',
  instrument: 'resistance drill RD-2, calibrated 2026-01-04',
  notes: 'OFFICE NOTE: the dog bites',
});

/** What an inspection found at one post: so deep a rot from each face. */
export const readingOf = (inspectionRef: string, post: number, depthMm: number): ReadingRecord => ({
  inspectionRef,
  post,
  groundlineKind: 'depth',
  groundlineMm: depthMm,
  cavityMm: null,
  leanDegrees: null,
  collarCracked: null,
  railConnection: null,
  trimmerCutMm: null,
  closedOff: false,
  sure: false,
  notes: 'OFFICE NOTE: look again',
});

/** That every post of a fence stood in a storm. */
export const stoodOn = (fenceRef: string, day: string, gustMps: number): StormOutcomeRecord => ({
  ref: `S-${fenceRef}-${day}`,
  storm: `storm of ${day}`,
  fenceRef,
  day,
  gustMps,
  gustSpread: 0.1,
  posts: 'all',
  result: 'stood',
  gustSource: 'anemometer at the clubhouse',
  reportedBy: 'Ann Tern',
  notes: 'OFFICE NOTE: heard by telephone',
});

/** A groundline treatment of every post. */
export const treatedOn = (fenceRef: string, day: string): WorksRecord =>
  worksSchema.parse({
    ref: `W-${fenceRef}-${day}`,
    fenceRef,
    day,
    kind: 'groundline-treatment',
    posts: 'all',
    yearsEffective: 5,
    embedmentM: null,
    footing: null,
    footingDiameterM: null,
    sectionKind: null,
    sectionWidthMm: null,
    sectionDepthMm: null,
    species: null,
    grade: null,
    incised: null,
    treatmentClass: null,
    momentCapacityNm: null,
    positionsM: null,
    postSpacingM: null,
  });

/** Puts records into a register, entered at a moment. */
export async function enterSeen({ db }: Register, seen: SeenRecords, now: string): Promise<void> {
  await upsertRecords(db, 'works', seen.works, now);
  await upsertRecords(db, 'inspections', seen.inspections, now);
  await upsertRecords(db, 'readings', seen.readings, now);
  await upsertRecords(db, 'outcomes', seen.outcomes, now);
}
