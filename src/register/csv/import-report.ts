import type { RecordKind, RecordOf } from '../record-store.ts';

/** Something about one cell (or a whole row or file, where `column` is empty): where, what it says, and why. */
export interface ImportRemark {
  readonly file: string;
  /** Line of the file on which the row begins; 1 is the header. */
  readonly line: number;
  /** All lines that it is about, where these are more rows than one. */
  readonly lines?: readonly number[];
  readonly column: string;
  readonly value: string;
  /** Why it cannot be taken (or is doubtful), and the way out. */
  readonly reason: string;
  /** True where it is refused only until somebody confirms it. */
  readonly question?: true;
}

/** How many records of a kind an import creates, changes, finds unchanged and refuses. */
export interface KindCounts {
  readonly created: number;
  readonly changed: number;
  readonly unchanged: number;
  readonly refused: number;
}

/** The counts of one file. */
export interface FileCounts extends KindCounts {
  readonly name: string;
  readonly kind: RecordKind;
}

/**
 * One record that is (or would be) created or changed. Posts are named `fence post number`, readings `inspection post number`, materials
 * by kind and name.
 */
export interface RecordChange {
  readonly kind: RecordKind;
  readonly ref: string;
  readonly change: 'created' | 'changed';
  /** Columns of the database that differ; empty for a created record. */
  readonly columns: readonly string[];
}

/** Records by kind. */
type RecordsByKind = { readonly [K in RecordKind]: readonly RecordOf[K][] };

/** What an import has found before it writes. */
export interface FoundChanges {
  readonly counts: Readonly<Record<RecordKind, KindCounts>>;
  readonly changes: readonly RecordChange[];
  readonly faults: readonly ImportRemark[];
  readonly records: RecordsByKind;
  readonly replaced: RecordsByKind;
}

/** What an import did, or would do. */
export interface ImportReport {
  /** True where the register was written to. */
  readonly applied: boolean;
  readonly dryRun: boolean;
  readonly counts: Readonly<Record<RecordKind, KindCounts>>;
  /** The same by file, of those whose kind is known, in their order. */
  readonly files: readonly FileCounts[];
  readonly changes: readonly RecordChange[];
  /** The records that are (or would be) created or changed, as they are stored. */
  readonly records: RecordsByKind;
  /** The records that the changed ones replace, as they were stored. */
  readonly replaced: RecordsByKind;
  /** New fences whose first notices wait for the office, the import being large; 0 where none do. */
  readonly fencesHeld: number;
  readonly faults: readonly ImportRemark[];
  readonly warnings: readonly ImportRemark[];
  /** The refused rows of each file as CSV, with the faults in a last column `reasons` that an import passes over. */
  readonly rejected: readonly { readonly name: string; readonly text: string }[];
}

/** Longest part of a value that a message repeats [characters]. */
const LONGEST_VALUE = 80;

const shown = (value: string): string =>
  JSON.stringify(value.length > LONGEST_VALUE ? `${value.slice(0, LONGEST_VALUE)}…` : value);

/** A remark as one line of text: `fences.csv line 7, height_in "6 ft": a unit is written in the cell; …`. */
export function remarkText({ file, line, column, value, reason }: ImportRemark): string {
  const where = column === '' ? '' : `, ${column}`;
  const what = value === '' ? '' : ` ${shown(value)}`;
  return `${file} line ${line}${where}${what}: ${reason}`;
}
