import type { FC } from 'hono/jsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import type { ChangedField, ChangedRecord } from './changed-fields.ts';
import { KIND_WORDS } from './kind-words.ts';

/** Longest part of a value that is shown in a table [characters]. */
const LONGEST_VALUE = 160;

const Value: FC<{ readonly value: string }> = ({ value }) =>
  value === '' ? (
    <span class="muted">empty</span>
  ) : (
    <span>{value.length > LONGEST_VALUE ? `${value.slice(0, LONGEST_VALUE)}…` : value}</span>
  );

/** What becomes of the fields of one record. */
export const FieldTable: FC<{
  readonly fields: readonly ChangedField[];
  readonly caption: string;
  readonly headings: readonly [before: string, after: string];
}> = ({ fields, caption, headings: [before, after] }) => (
  <ScrollFrame label={caption}>
    <table class="stacked">
      <caption>{caption}</caption>
      <thead>
        <tr>
          <th scope="col">Field</th>
          <th scope="col">{before}</th>
          <th scope="col">{after}</th>
        </tr>
      </thead>
      <tbody>
        {fields.map((field) => (
          <tr>
            <th scope="row">{field.label}</th>
            <td data-label={before}>
              <Value value={field.before} />
            </td>
            <td data-label={after}>
              <Value value={field.after} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  </ScrollFrame>
);

/** Changed values shown at most. */
const MOST_VALUES = 400;

/**
 * What becomes of the fields of several records, a line a field.
 * @param total how many records change, of which the first are given
 */
export const ChangedTable: FC<{ readonly changed: readonly ChangedRecord[]; readonly total: number }> = ({
  changed,
  total,
}) => {
  const rows = changed.flatMap((record) => record.fields.map((field) => ({ record, field })));
  const isCut = rows.length > MOST_VALUES || total > changed.length;
  return (
    <ScrollFrame label="What becomes another value">
      <table class="stacked changes">
        <caption>
          {isCut
            ? `The first ${Math.min(rows.length, MOST_VALUES)} values, of ${total} records that change`
            : 'Old and new values'}
        </caption>
        <thead>
          <tr>
            <th scope="col">Record</th>
            <th scope="col">Field</th>
            <th scope="col">Now</th>
            <th scope="col">After the import</th>
          </tr>
        </thead>
        <tbody>
          {rows.slice(0, MOST_VALUES).map(({ record, field }) => (
            <tr>
              <th scope="row">
                {record.name}
                <span class="small">{KIND_WORDS[record.kind].one}</span>
              </th>
              <td data-label="Field">{field.label}</td>
              <td data-label="Now">
                <Value value={field.before} />
              </td>
              <td data-label="After the import">
                <Value value={field.after} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollFrame>
  );
};
