import type { FC } from 'hono/jsx';
import type { ExportUnits } from '../../register/csv/csv-field.ts';
import type { RowCells } from '../../register/csv/record-cells.ts';
import { RECORD_FIELDS } from '../../register/csv/record-columns.ts';
import type { RecordEdit } from '../../register/record-edit-store.ts';
import type { RecordKind } from '../../register/record-store.ts';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { columnLabel } from './column-words.ts';
import { EDITED_KINDS, editPath } from './edited-kinds.ts';
import { KIND_WORDS } from './kind-words.ts';
import { RecordEdits } from './record-edits.tsx';
import { shownColumn } from './record-fields.tsx';

/** A long decimal, which a conversion of units leaves, to five digits; anything else as it is. */
const shownValue = (text: string): string =>
  /^-?\d+\.\d{4,}$/.test(text) ? String(Number(Number(text).toPrecision(5))) : text;

/** Everything that a record says, as a list of facts; what is empty is left out. */
export const RecordFactsList: FC<{
  readonly kind: RecordKind;
  readonly cells: RowCells;
  readonly units: ExportUnits;
  readonly leftOut?: ReadonlySet<string>;
}> = ({ kind, cells, units, leftOut = new Set() }) => (
  <dl class="facts">
    {RECORD_FIELDS[kind]
      .map((field) => shownColumn(field, cells, units))
      .filter((column) => (cells[column] ?? '') !== '' && !leftOut.has(column))
      .map((column) => (
        <div>
          <dt>{columnLabel(kind, column)}</dt>
          <dd class="kept-lines">{shownValue(cells[column] ?? '')}</dd>
        </div>
      ))}
  </dl>
);

/** The page of one record of a kind that has no page of its own. */
export const RecordPage: FC<{
  readonly frame: PageFrame;
  readonly kind: RecordKind;
  readonly name: string;
  readonly cells: RowCells;
  readonly units: ExportUnits;
  readonly edits: readonly RecordEdit[];
  /** What was just saved, in a sentence. */
  readonly done: string | null;
}> = ({ frame, kind, name, cells, units, edits, done }) => {
  const about = EDITED_KINDS[kind];
  const { one } = KIND_WORDS[kind];
  const fence = kind === 'fences' ? name : cells.fence;
  return (
    <PageShell title={`${one} ${name}`} section="records" frame={frame} cautions={false}>
      <p class="back">
        <a href={about?.list}>{about?.listName}</a>
      </p>
      <h1>{`${one.charAt(0).toUpperCase()}${one.slice(1)} ${name}`}</h1>
      {done && <p class="done">{done}</p>}
      <RecordFactsList kind={kind} cells={cells} units={units} />
      <p>
        <a href={editPath(kind, name)}>{`Change this ${one}`}</a>
      </p>
      {fence && (
        <p>
          <a href={`/fences/${encodeURIComponent(fence)}`}>{`Fence ${fence}`}</a>
          {' · '}
          <a href={`/fences/${encodeURIComponent(fence)}/entries`}>What was seen and done at it</a>
        </p>
      )}
      <RecordEdits edits={edits} units={units} />
    </PageShell>
  );
};
