import { writeCsv } from './csv-text.ts';
import { type ImportFile, REASONS_COLUMN } from './import-file.ts';
import type { ImportRemark } from './import-report.ts';

const reasonOf = ({ column, reason }: ImportRemark): string => (column === '' ? reason : `${column}: ${reason}`);

/** The refused rows of each file that has any, as CSV with a last column that says why. */
export function rejectedFiles(
  files: readonly ImportFile[],
  faults: readonly ImportRemark[],
): readonly { readonly name: string; readonly text: string }[] {
  return files.flatMap((file) => {
    const kept = file.header.flatMap((column, index) => (column === REASONS_COLUMN ? [] : [index]));
    const ofFile = file.faults.map(reasonOf);
    const ofLine = new Map<number, string[]>();
    for (const fault of faults) {
      if (fault.file !== file.name || file.faults.includes(fault)) continue;
      for (const line of fault.lines ?? [fault.line]) ofLine.set(line, [...(ofLine.get(line) ?? []), reasonOf(fault)]);
    }
    const rows = file.rows.flatMap(({ line, cells }) => {
      const reasons = [...ofFile, ...(ofLine.get(line) ?? [])];
      return reasons.length === 0 ? [] : [[...kept.map((index) => cells[index] ?? ''), reasons.join(' | ')]];
    });
    if (rows.length === 0) return [];
    return [
      { name: file.name, text: writeCsv([[...kept.map((index) => file.header[index]!), REASONS_COLUMN], ...rows]) },
    ];
  });
}
