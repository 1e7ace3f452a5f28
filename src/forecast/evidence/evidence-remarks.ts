import type { EvidenceSummary } from './evidence-summary.ts';

/** Points by their worth under which the storm reports fit almost nothing the model holds possible [-]; model choice. */
const FEW_POINTS = 16;
/** ln likelihood a post under which even the best point does not explain the reports [-]; model choice. */
const POOR_FIT = -4;

/** What people should know of the evidence itself, in plain words. */
export function evidenceRemarks(evidence: EvidenceSummary | null): readonly string[] {
  if (!evidence) return [];
  const remarks: string[] = [];
  if (evidence.disagrees) {
    const once = Math.round(1 / Math.max(1e-5, evidence.surprise!));
    remarks.push(
      `The readings disagree with the model: it gave them less than one chance in ${once >= 10_000 ? '10,000' : once}. The rot pace is taken twice as uncertain; check treatment class, install date and readings.`,
    );
  }
  if (evidence.effectivePoints < FEW_POINTS || evidence.stormFit < POOR_FIT) {
    remarks.push(
      'The storm reports fit hardly anything the model holds possible: check the gusts and what is recorded of the footings.',
    );
  }
  return remarks;
}
