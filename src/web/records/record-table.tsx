import type { FC } from 'hono/jsx';
import type { ExportUnits } from '../../register/csv/csv-field.ts';
import { plainCells, type RowCells, recordCells } from '../../register/csv/record-cells.ts';
import { recordName } from '../../register/csv/register-view.ts';
import type { RecordKind, RecordOf } from '../../register/record-store.ts';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import { editPath } from './edited-kinds.ts';
import { KIND_WORDS } from './kind-words.ts';

/** One column of a table of records: its heading, and what it says of a record's cells. */
export interface TableColumn {
  readonly heading: string;
  readonly figure?: boolean;
  readonly text: (cells: RowCells) => string;
}

/** A short kind of records as a table, each row with the way to change it. */
export function RecordTable<K extends RecordKind>({
  kind,
  records,
  units,
  name,
  columns,
  empty,
}: {
  readonly kind: K;
  readonly records: readonly RecordOf[K][];
  readonly units: ExportUnits;
  /** What a row is called in its first cell. */
  readonly name: TableColumn;
  readonly columns: readonly TableColumn[];
  readonly empty: string;
}): ReturnType<FC> {
  if (records.length === 0) return <p>{empty}</p>;
  return (
    <ScrollFrame label={KIND_WORDS[kind].several}>
      <table class="stacked spaced">
        <caption>{`${records.length} ${KIND_WORDS[kind][records.length === 1 ? 'one' : 'several']}`}</caption>
        <thead>
          <tr>
            <th scope="col">{name.heading}</th>
            {columns.map(({ heading, figure }) => (
              <th scope="col" class={figure ? 'figure' : undefined}>
                {heading}
              </th>
            ))}
            <th scope="col">
              <span class="visually-hidden">Change</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {records.map((record) => {
            const cells = plainCells(kind, recordCells(kind, record, units));
            const path = editPath(kind, recordName(kind, record));
            return (
              <tr>
                <th scope="row">
                  {name.text(cells)}
                  {cells.ref && <span class="small">{cells.ref}</span>}
                </th>
                {columns.map(({ heading, figure, text }) => (
                  <td data-label={heading} class={figure ? 'figure' : undefined}>
                    {text(cells) || '–'}
                  </td>
                ))}
                <td data-label="Change">
                  <a href={path} aria-label={`Change ${KIND_WORDS[kind].one} ${name.text(cells)}`}>
                    change
                  </a>
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </ScrollFrame>
  );
}
