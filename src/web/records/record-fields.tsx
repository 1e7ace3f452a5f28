import type { FC } from 'hono/jsx';
import type { CsvField, ExportUnits } from '../../register/csv/csv-field.ts';
import { namingColumns } from '../../register/csv/import-file.ts';
import type { ImportRemark } from '../../register/csv/import-report.ts';
import type { RowCells } from '../../register/csv/record-cells.ts';
import { RECORD_FIELDS } from '../../register/csv/record-columns.ts';
import type { RecordKind } from '../../register/record-store.ts';
import { ChoiceField, FormField } from '../frame/form-field.tsx';
import { columnLabel } from './column-words.ts';

/** Texts that may be long. */
const LONG_TEXTS: ReadonlySet<string> = new Set([
  'postal_address',
  'wind_source',
  'source',
  'notes',
  'note',
  'access_note',
  'reason',
  'gust_source',
]);

/** Columns whose meaning their name does not tell. */
const HINTS: Readonly<Record<string, string>> = {
  ref: '1 to 40 letters, digits, points, hyphens and underscores. It stays for good.',
  section: 'As 4x4, 6x6, round 5, or 38x89mm.',
  installed: 'A day, a month or a year: 2014-05-03, 2014-05, 2014, or 2012..2015.',
  named_end: 'The end from which posts are numbered, as street end.',
  second_owner: 'Ref of the other owner of a shared fence.',
  owner: 'Ref of the owner.',
  site: 'Ref of the site.',
  fence: 'Ref of the fence.',
  crew: 'Ref of the crew.',
  time_zone: 'As America/Chicago.',
  wind_source: 'Which map or rule, read where and when.',
  season_opens: 'As 06-01. Empty, with the next two, where a storm season is named.',
  frozen_from: 'As 12-01.',
  posts: 'all, or numbers parted by blanks, as 3 4 7-9.',
  weather_reserve: '0.1 keeps a tenth of the hours back.',
  from_day: 'As 2027-06-01.',
  first_day: 'As 2027-06-01.',
  day: 'As 2026-05-12.',
};

/** What a form of a record needs to know. */
export interface RecordFieldsProps {
  readonly kind: RecordKind;
  readonly cells: RowCells;
  readonly units: ExportUnits;
  /** False where the record is there already: its name then stays. */
  readonly isNew: boolean;
  /** Refs to choose from, by column, with what they are called. */
  readonly refs: Readonly<Record<string, readonly (readonly [ref: string, name: string])[]>>;
  readonly faults: readonly ImportRemark[];
}

/** The column in which a form shows a field: a filled one, else the usual one of the units. */
export const shownColumn = (field: CsvField, cells: RowCells, units: ExportUnits): string =>
  field.columns.find((column) => (cells[column] ?? '') !== '') ?? field.column(units);

/** Faults that belong to no field of the form. */
export function loneFaults({ kind, faults }: Pick<RecordFieldsProps, 'kind' | 'faults'>): readonly ImportRemark[] {
  const known = new Set(RECORD_FIELDS[kind].flatMap(({ columns }) => columns));
  return faults.filter(({ column }) => !known.has(column));
}

/** The fields of a record's form, one a column of its file, each with what is wrong with it. */
export const RecordFields: FC<RecordFieldsProps> = (props) => {
  const { kind, cells, units, isNew, refs, faults } = props;
  const fixed = new Set(isNew ? [] : namingColumns(kind));
  return (
    <>
      {RECORD_FIELDS[kind].map((field) => {
        const column = shownColumn(field, cells, units);
        const value = cells[column] ?? '';
        const reasons = faults.filter((fault) => field.columns.includes(fault.column)).map(({ reason }) => reason);
        const fault = reasons.length === 0 ? undefined : [...new Set(reasons)].join(' · ');
        const label = `${columnLabel(kind, column)}${field.required || fixed.has(column) ? '' : ' (may be empty)'}`;
        const hint = HINTS[column];
        if (fixed.has(column)) {
          return (
            <div class="field">
              <span class="fixed-name">{columnLabel(kind, column)}</span>
              <span>{value}</span>
              <input type="hidden" name={column} value={value} />
            </div>
          );
        }
        const common = { name: column, label, ...(hint ? { hint } : {}), fault };
        const choices = refs[column] ?? field.choices?.map((word) => [word, word] as const);
        if (choices) {
          const stray = value !== '' && !choices.some(([word]) => word === value) ? [[value, value] as const] : [];
          const none = field.required && value !== '' ? [] : [['', field.required ? 'choose' : ''] as const];
          return <ChoiceField {...common} chosen={value} choices={[...none, ...choices, ...stray]} />;
        }
        if (LONG_TEXTS.has(column)) return <LongTextField {...common} value={value} />;
        return <FormField {...common} value={value} required={field.required} />;
      })}
    </>
  );
};

/** A field for several lines of text, as `FormField`. */
export const LongTextField: FC<{
  readonly name: string;
  readonly label: string;
  readonly value: string;
  readonly hint?: string | undefined;
  readonly fault?: string | undefined;
  readonly rows?: number;
}> = ({ name, label, value, hint, fault, rows = 3 }) => (
  <div class="field">
    <label for={name}>{label}</label>
    <textarea
      id={name}
      name={name}
      rows={rows}
      aria-describedby={[hint && `${name}-hint`, fault && `${name}-fault`].filter(Boolean).join(' ') || undefined}
      aria-invalid={fault ? 'true' : undefined}
    >
      {value}
    </textarea>
    {hint && (
      <p class="hint" id={`${name}-hint`}>
        {hint}
      </p>
    )}
    {fault && (
      <p class="fault" id={`${name}-fault`}>
        {fault}
      </p>
    )}
  </div>
);
